using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>The work by site and area; within them, and from area to area, in working order.</summary>
internal static class SheetJobs
{
    /// <summary>Two times less than two roundings apart would read the wrong way round.</summary>
    private static readonly Duration NoTime = Duration.FromMinutes(30);

    private const char EmptyBox = '\u2610';

    public static IReadOnlyList<SheetPlace> Of(GardenBook book, GardenPlan plan, Times times) =>
    [
        .. from entry in plan.InWorkingOrder()
           let area = book.AreaOf(book.ItemOf(entry.Job.Job))
           group (area, entry) by area.SiteId into site
           from place in site.GroupBy(pair => pair.area.Id)
           let area = place.First().area
           select new SheetPlace(
               $"{Plain.Line(book.SiteOf(area).Name)}, {Plain.Line(area.Name)}",
               [.. place.Select(pair => Line(book, pair.entry.Number, pair.entry.Job, times))]),
    ];

    private static SheetJob Line(GardenBook book, int number, PlannedJob planned, Times times) => new(
        number,
        Words.Title(BriefLines.Line(book, planned.Job)),
        $"Start {times.NotBefore(planned.Start)}, {(planned.StartBy - planned.Start < NoTime ? "no time to spare" : $"last start {times.Deadline(planned.StartBy)}")}. {Effort(book, planned)}",
        [.. Details(book, planned.Job)]);

    private static string Effort(GardenBook book, PlannedJob planned) =>
        $"{Amounts.Minutes(planned.Job.Minutes)}, {Words.Together([.. planned.People.Select(id => Plain.Line(book.People.First(person => person.Id == id).Name))])}";

    private static IEnumerable<string> Details(GardenBook book, Job job)
    {
        string[] parts =
        [
            job.Materials.Count > 0 ? "Bring " + string.Join(", ", job.Materials.Select(need => $"{Words.Token(need.Material)} {Amounts.Of(need.Quantity, need.Unit, book.Units)}")) : "",
            job.StoreId is { } id ? $"Into: {Plain.Line(book.Stores.First(store => store.Id == id).Name)}" : "",
            job.Undo is { } undo ? $"{EmptyBox} Afterwards: {Words.Of(undo)}" : "",
        ];
        var line = string.Join(". ", parts.Where(part => part.Length > 0));
        if (line.Length > 0) yield return line;
        string[] cautions = [.. new[] { job.Caution, book.ItemOf(job).Caution }.OfType<string>()];
        if (cautions.Length > 0) yield return $"Take care: {string.Join(" ", cautions.Select(Plain.Line))}";
        if (job.Fallback is { } fallback) yield return $"If not: {Plain.Line(fallback)}";
    }
}
