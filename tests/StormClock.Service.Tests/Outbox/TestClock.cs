namespace StormClock.Service.Tests.Outbox;

/// <summary>A clock that stands still until it is moved.</summary>
internal sealed class TestClock(Instant start) : IClock
{
    private Instant now = start;

    public Instant GetCurrentInstant() => now;

    public void Advance(Duration by) => now += by;
}
