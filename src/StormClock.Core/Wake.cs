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
            .Append(stage.Stage == Stage.GardenClosed ? stage.Since + InReminders.Wait : null)
            .Append(stage.Stage == Stage.GardenClosed ? NextLight(garden, Instant.Max(now, (unsafeUntil ?? now) + SignReader.StillFor))?.Start : null);
        return moments.Where(moment => moment > now).Min();
    }

    /// <summary>The first stretch of light to look by from an instant on; null in a polar night.</summary>
    public static Interval? NextLight(GardenBook garden, Instant from)
    {
        var site = garden.Sites[0];
        var date = from.InZone(garden.Zone).Date;
        return Enumerable.Range(0, 3)
            .Select(days => WorkLight.On(date.PlusDays(days), site.At, garden.Zone, WorkClass.Ground))
            .Where(light => light is { } window && window.End > from)
            .Select(light => (Interval?)new Interval(Instant.Max(from, light!.Value.Start), light.Value.End))
            .FirstOrDefault();
    }
}
