using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Core;

/// <summary>What is remembered of one garden between decisions; kept by the service together with what it decided.</summary>
/// <param name="Stop">The stop time that people have been told.</param>
/// <param name="Alerted">An official alert of wind stood for the place in this episode.</param>
/// <param name="UnsafeUntil">When the newest advisory that still brought wind lets it end in (almost) every member.</param>
public sealed record GardenStanding(StageStanding Stage, HeldStop Stop, Announced Announced, bool Alerted, Instant? UnsafeUntil)
{
    /// <summary>Since when each planned job has been late without an answer; empty in a standing that was kept before it was.</summary>
    public IReadOnlyDictionary<string, Instant> LateSince { get; init; } = new Dictionary<string, Instant>();

    /// <summary>The plan in force; null when none is, or when it is not known any more: then it is made anew.</summary>
    public KeptPlan? Kept { get; init; }

    public static GardenStanding Calm(Instant now) => new(StageStanding.Calm(now), HeldStop.None, Announced.Nothing, false, null);
}
