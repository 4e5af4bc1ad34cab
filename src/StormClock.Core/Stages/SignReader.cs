using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;

namespace StormClock.Core.Stages;

/// <summary>Gathers the signs that a stage is read from.</summary>
public static class SignReader
{
    /// <summary>The wind must have been below the limit this long before anyone looks (science.md 4.2).</summary>
    public static readonly Duration StillFor = Duration.FromHours(3);

    /// <summary>A message that merely ran out is no official end; after this long it is taken for one (convention).</summary>
    private static readonly Duration LapsedCounts = Duration.FromHours(24);

    /// <param name="firstMainStartBy">Latest start of the first main job not done.</param>
    /// <param name="alerted">An official alert of wind stood for the place in this episode.</param>
    /// <param name="unsafeUntil">When the wind was last expected to be over.</param>
    public static StageSigns Read(
        HazardTimeline timeline, GardenOutlook outlook, GardenBook garden, Instant? firstMainStartBy, bool alerted, Instant? unsafeUntil)
    {
        var now = timeline.AsOf;
        var still = outlook.Ground.LastEnd is null && !(unsafeUntil + StillFor > now);
        return new(
            now,
            outlook.Chance,
            outlook.Earliest,
            outlook.GroundStop,
            outlook.Warned,
            outlook.Unmatched,
            outlook.Order,
            outlook.LeaveBy,
            firstMainStartBy,
            timeline.NewestWord,
            timeline.IsLastWord,
            still && OfficiallyOver(timeline, alerted),
            alerted || timeline.Leading is { Final: true } || (timeline.Leading is null && timeline.LastFinal is not null),
            garden.Sites.All(site => HasLight(garden, site, now)),
            outlook.Source)
        {
            Rain = outlook.Rain,
        };
    }

    /// <summary>
    /// The last alert that stood for the place has ended; where none stood, the storm's last advisory has come or its
    /// forecast wind has passed, which the caller's still air already says.
    /// </summary>
    private static bool OfficiallyOver(HazardTimeline timeline, bool alerted) =>
        !alerted || (timeline.Alerts.All(alert => !alert.Holds)
            && timeline.Ended.All(alert => alert.State != AlertState.Lapsed || timeline.AsOf - alert.Until >= LapsedCounts));

    private static bool HasLight(GardenBook garden, Site site, Instant now) =>
        WorkLight.On(now.InZone(garden.Zone).Date, site.At, garden.Zone, WorkClass.Ground)?.Contains(now) ?? false;
}
