using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;

namespace StormClock.Core;

/// <summary>When time alone may change a decision.</summary>
internal static class Wake
{
    /// <summary>Leads at which a stage limit is crossed by waiting (science.md 4.3).</summary>
    private static readonly int[] StageLeadHours = [72, 36, 12, 0];

    public static Instant? Next(
        GardenBook garden, StageStanding stage, GardenOutlook outlook, GardenPlan? plan, Instant? unsafeUntil, Instant now)
    {
        if (stage.Stage == Stage.NothingDue && stage.EpisodeId is null && outlook.Earliest is null && outlook.LeaveBy is null) return null;
        var moments = StageLeadHours.Select(hours => outlook.Earliest - Duration.FromHours(hours))
            .Append(outlook.LeaveBy)
            .Append(plan?.WorkStops[WorkClass.Ground].Earliest)
            .Concat(garden.People.Select(person => WorkDays.Next(garden, person, now)))
            .Append(stage.Stage == Stage.GardenClosed ? NextLight(garden, Instant.Max(now, (unsafeUntil ?? now) + SignReader.StillFor)) : null);
        return moments.Where(moment => moment > now).Min();
    }

    /// <summary>The first moment from an instant on at which there is light to look by; null in a polar night.</summary>
    public static Instant? NextLight(GardenBook garden, Instant from)
    {
        var site = garden.Sites[0];
        var date = from.InZone(garden.Zone).Date;
        return Enumerable.Range(0, 3)
            .Select(days => WorkLight.On(date.PlusDays(days), site.At, garden.Zone, WorkClass.Ground))
            .Where(light => light is { } window && window.End > from)
            .Select(light => (Instant?)Instant.Max(from, light!.Value.Start))
            .FirstOrDefault();
    }
}
