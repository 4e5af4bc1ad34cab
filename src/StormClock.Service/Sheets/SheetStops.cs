using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Messages;

namespace StormClock.Service.Sheets;

/// <summary>When each class of work stops, the first to stop first, with the wind at which it does.</summary>
internal static class SheetStops
{
    public static IEnumerable<string> Of(GardenBook book, GardenPlan plan, Times times) =>
        from stop in plan.WorkStops
        orderby stop.Value.Earliest ?? Instant.MaxValue, stop.Key
        select $"{stop.Key} work, {Limit(book, stop.Key)}: {When(stop.Value, times)}";

    private static string Limit(GardenBook book, WorkClass work)
    {
        var limit = book.Limits[work];
        return $"at {Amounts.Speed(limit.SustainedMps, book.Units)} sustained or {Amounts.Speed(limit.GustMps, book.Units)} gust";
    }

    private static string When(WorkStop stop, Times times) => stop switch
    {
        { Earliest: null } => "no stop time can be named yet. It may come with any new forecast",
        { Earliest: { } earliest } when times.IsPast(earliest) => "STOPPED: that wind could come at any time now",
        { Earliest: { } earliest, Likely: { } likely } => $"stop by {times.Deadline(earliest)} (more likely from {times.Deadline(likely)})",
        _ => $"stop by {times.Deadline(stop.Earliest!.Value)}",
    };
}
