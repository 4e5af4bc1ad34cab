using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Delivery;

/// <summary>One harmless message, to see that mail arrives; in the person's language, so that it also shows whether its letters arrive whole.</summary>
internal static class TestMessage
{
    /// <param name="pushLink">The way to notifications; null where there is none.</param>
    public static Outgoing To(Person person, string? pushLink, Instant now)
    {
        var speech = Speech.Of(person, UnitSystem.Metric);
        var id = $"test-{now.ToUnixTimeMilliseconds()}";
        var (subject, text) = (speech.Say("test.subject"), speech.Say("test.text"));
        var (way, html) = pushLink is null
            ? ("", "")
            : ($"\n\n{speech.Say("test.push")}\n{pushLink}\n", $"<p><a href=\"{pushLink}\">{speech.Say("test.push.link")}</a></p>");
        return new(id, $"{id}@stormclock.invalid", $"{id}.thread@stormclock.invalid", person.Name, person.Email!, subject, text + way, $"<p>{text}</p>{html}", now) { Language = speech.Tag };
    }
}
