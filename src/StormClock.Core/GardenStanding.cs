using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Core;

/// <summary>What is remembered of one garden between decisions; kept by the service with every decision.</summary>
/// <param name="Jobs">Last word on each job in this episode, by job id.</param>
/// <param name="Alerted">An official alert of wind stood for the place in this episode.</param>
/// <param name="UnsafeUntil">When the newest advisory that still brought wind lets it end in every member.</param>
public sealed record GardenStanding(
    StageStanding Stage,
    Announced Announced,
    IReadOnlyDictionary<string, JobState> Jobs,
    bool Alerted,
    Instant? UnsafeUntil)
{
    public static GardenStanding Calm(Instant now) =>
        new(StageStanding.Calm(now), Announced.Nothing, new Dictionary<string, JobState>(), false, null);
}
