namespace StormClock.Service.Tests.Outbox;

/// <summary>A clock that stands still until it is moved, or moves a step at each reading.</summary>
internal sealed class TestClock(Instant start) : IClock
{
    private Instant now = start;

    public Duration StepPerReading { get; set; } = Duration.Zero;

    public Instant GetCurrentInstant()
    {
        var read = now;
        now += StepPerReading;
        return read;
    }

    public void Advance(Duration by) => now += by;
}
