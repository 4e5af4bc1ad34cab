using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Sheets;

/// <summary>When each class of work stops, the first to stop first, with the wind at which it does.</summary>
internal static class SheetStops
{
    public static IEnumerable<string> Of(GardenBook book, GardenPlan plan, Times times, Speech speech) =>
        from stop in plan.WorkStops
        orderby stop.Value.Earliest ?? Instant.MaxValue, stop.Key
        select speech.Say(
            "sheet.stop",
            ("work", Words.Capital(Words.Of(stop.Key, speech))),
            ("sustained", Amounts.Speed(book.Limits[stop.Key].SustainedMps, speech)),
            ("gust", Amounts.Speed(book.Limits[stop.Key].GustMps, speech)),
            ("when", When(stop.Value, times, speech)));

    private static string When(WorkStop stop, Times times, Speech speech) => stop switch
    {
        { Earliest: null } => speech.Say("sheet.stop.none"),
        { Earliest: { } earliest } when times.IsPast(earliest) => speech.Say("sheet.stop.now"),
        { Earliest: { } earliest, Likely: { } likely } => speech.Say("sheet.stop.by.likely", ("time", times.Deadline(earliest)), ("likely", times.Deadline(likely))),
        _ => speech.Say("sheet.stop.by", ("time", times.Deadline(stop.Earliest!.Value))),
    };
}
