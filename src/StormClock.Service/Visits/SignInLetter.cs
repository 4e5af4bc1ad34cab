using System.Net;
using StormClock.Core.Garden;
using StormClock.Service.Delivery;
using StormClock.Service.Wording;

namespace StormClock.Service.Visits;

/// <summary>Brings the link by which a person signs in once.</summary>
internal static class SignInLetter
{
    public static Outgoing To(Person person, UnitSystem units, Uri link, Instant now)
    {
        var speech = Speech.Of(person, units);
        var id = $"in-{now.ToUnixTimeMilliseconds()}-{Guid.NewGuid():N}";
        var text = speech.Say("in.letter", ("minutes", (int)SignInDesk.LinkLife.TotalMinutes));
        var html = $"<p>{WebUtility.HtmlEncode(text)}</p><p><a href=\"{WebUtility.HtmlEncode(link.AbsoluteUri)}\">{WebUtility.HtmlEncode(speech.Say("in.letter.link"))}</a></p>";
        return new(id, $"{id}@stormclock.invalid", $"{id}.thread@stormclock.invalid", person.Name, person.Email!, speech.Say("in.letter.subject"), $"{text}\n\n{link}\n", html, now) { Language = speech.Tag };
    }
}
