namespace StormClock.Service.Desk;

/// <summary>NodaTime's clock over the host's one source of time.</summary>
public sealed class ProviderClock(TimeProvider time) : IClock
{
    public Instant GetCurrentInstant() => Instant.FromDateTimeOffset(time.GetUtcNow());
}
