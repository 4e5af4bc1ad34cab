using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;
using StormClock.Service.Calendars;
using StormClock.Service.Tests.Pictures;

namespace StormClock.Service.Tests.Calendars;

/// <summary>Decisions over the invented garden Tern Hook, and the calendars that follow from them.</summary>
internal static class PlannedCalendars
{
    public static GardenBook Book => InventedPlans.TernHook;

    public static Instant Now => InventedPlans.Now;

    public static GardenPlan Plan { get; } = InventedPlans.Of(Book);

    public static Decision Decided(GardenPlan? plan, Stage stage = Stage.MainWork, OfficialOrder order = OfficialOrder.None, Instant? leaveBy = null, string? episode = "e1")
    {
        var calm = GardenStanding.Calm(Now);
        var reason = new StageReason(StageCause.Chance, "THESSALY advisory 1", Now - Duration.FromHours(1), 0.6);
        return new(calm with { Stage = calm.Stage with { EpisodeId = episode, Stage = stage, Reason = reason } }, plan, leaveBy, order, [], "", null);
    }

    public static GardenCalendar Next(GardenCalendar before, Decision decision, Duration? later = null) =>
        CalendarChanges.Next(before, Book, decision, "folder", Now + (later ?? Duration.Zero));

    public static GardenCalendar First { get; } = Next(GardenCalendar.Empty, Decided(Plan));

    /// <summary>The plan with one job at another time.</summary>
    public static GardenPlan Moved(string jobId, Duration by) => Plan with
    {
        Jobs = [.. Plan.Jobs.Select(job => job.Job.Id == jobId ? job with { Start = job.Start + by, End = job.End + by } : job)],
    };

    public static GardenPlan Without(string jobId) => Plan with { Jobs = [.. Plan.Jobs.Where(job => job.Job.Id != jobId)] };
}
