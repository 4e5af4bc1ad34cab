using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Messages.Letters;
using StormClock.Service.Pictures;
using StormClock.Service.Wording;

namespace StormClock.Service.Sheets;

/// <summary>The work by site and area; within them, and from area to area, in working order.</summary>
internal static class SheetJobs
{
    private const char EmptyBox = '\u2610';

    public static IReadOnlyList<SheetPlace> Of(GardenBook book, GardenPlan plan, Times times, Speech speech) =>
    [
        .. from entry in plan.InWorkingOrder()
           let area = book.AreaOf(book.ItemOf(entry.Job.Job))
           group (area, entry) by area.SiteId into site
           from place in site.GroupBy(pair => pair.area.Id)
           let area = place.First().area
           select new SheetPlace(
               $"{Plain.Line(book.SiteOf(area).Name)}, {Plain.Line(area.Name)}",
               [.. place.Select(pair => Line(book, pair.entry.Number, pair.entry.Job, times, speech))]),
    ];

    private static SheetJob Line(GardenBook book, int number, PlannedJob planned, Times times, Speech speech) => new(
        number,
        Words.Title(BriefLines.Line(book, planned.Job), speech),
        $"{JobSection.Start(planned.Start, planned.StartBy, times, speech)}. {Effort(book, planned, speech)}",
        [.. Details(book, planned.Job, speech)]);

    private static string Effort(GardenBook book, PlannedJob planned, Speech speech) =>
        $"{Amounts.Minutes(planned.Job.Minutes)}, {Words.Together([.. planned.People.Select(id => Plain.Line(book.People.First(person => person.Id == id).Name))], speech)}";

    private static IEnumerable<string> Details(GardenBook book, Job job, Speech speech)
    {
        var line = BriefLines.Line(book, job);
        string[] parts =
        [
            job.Materials.Count > 0 ? JobSection.Bring(job.Materials, speech) : "",
            line.StoreName is { } store ? JobSection.Into(store, speech) : "",
            job.Undo is { } undo ? $"{EmptyBox} {speech.Say("sheet.undo", ("work", Words.Of(undo, speech)))}" : "",
        ];
        if (string.Join(". ", parts.Where(part => part.Length > 0)) is { Length: > 0 } what) yield return what;
        if (line.TakeCare.Count > 0) yield return JobSection.TakeCare(line.TakeCare, speech);
        if (job.Fallback is { } fallback) yield return speech.Say("sheet.fallback", ("fallback", Plain.Line(speech.Catalogue(fallback))));
    }
}
