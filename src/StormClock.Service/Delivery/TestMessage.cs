namespace StormClock.Service.Delivery;

/// <summary>One harmless message, to see that mail arrives.</summary>
internal static class TestMessage
{
    private const string Text = "This is a test from StormClock. If you can read it, messages reach you here. Nothing is to be done.";

    /// <param name="pushLink">Setting up notifications is best done before a storm, so the way to it goes along; null where there is none.</param>
    public static Outgoing To(string name, string address, string? pushLink, Instant now)
    {
        var id = $"test-{now.ToUnixTimeMilliseconds()}";
        return new(
            id, $"{id}@stormclock.invalid", $"{id}.thread@stormclock.invalid", name, address, "StormClock test: nothing to do",
            pushLink is null ? Text : $"{Text}\n\nTo see messages on this phone too, open:\n{pushLink}\n",
            pushLink is null ? $"<p>{Text}</p>" : $"<p>{Text}</p><p><a href=\"{pushLink}\">See messages on this phone too</a></p>", now);
    }
}
