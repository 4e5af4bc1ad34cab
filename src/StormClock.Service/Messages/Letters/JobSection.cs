using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages.Letters;

/// <summary>Jobs in the order given, under the site and area they are at, numbered through.</summary>
internal static class JobSection
{
    /// <summary>Two times less than two roundings apart would read the wrong way round.</summary>
    public static readonly Duration NoTime = Duration.FromMinutes(30);

    public static IEnumerable<Block> Of(string heading, LetterContext context)
    {
        var jobs = context.Jobs;
        if (jobs.Count == 0) yield break;

        yield return new Heading(heading);
        if (jobs.Any(job => job.StartBy is { } by && !context.Times.IsPast(by)))
        {
            yield return new Paragraph(context.Say("jobs.last-start"));
        }

        var place = "";
        for (var i = 0; i < jobs.Count; i++)
        {
            var here = Words.Place(jobs[i]);
            if (here != place) yield return new Place(place = here);

            yield return new Entry(i + 1, Words.Title(jobs[i], context.Speech), [.. Details(jobs[i], context)]);
        }
    }

    private static IEnumerable<string> Details(BriefJob job, LetterContext context)
    {
        if (Effort(job, context) is { Length: > 0 } effort) yield return effort;
        if (job.Bring.Count > 0) yield return Bring(job.Bring, context.Speech);
        if (job.StoreName is { } store) yield return Into(store, context.Speech);
        if (job.TakeCare.Count > 0) yield return TakeCare(job.TakeCare, context.Speech);
        if (When(job, context) is { } when) yield return when;
    }

    /// <summary>Minutes and people, as far as they are planned: a look after the storm has neither.</summary>
    private static string Effort(BriefJob job, LetterContext context)
    {
        string[] parts = [job.Minutes > 0 ? Amounts.Minutes(job.Minutes) : "", Words.Together([.. job.PeopleNames.Select(Plain.Line)], context.Speech)];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    /// <summary>Also for the sheet.</summary>
    public static string Bring(IEnumerable<MaterialNeed> materials, Speech speech) => speech.Say(
        "jobs.bring",
        ("materials", string.Join(", ", materials.Select(need => $"{Words.Token(need.Material, speech)} {Amounts.Of(need.Quantity, need.Unit, speech)}"))));

    /// <summary>Also for the sheet.</summary>
    public static string Into(string store, Speech speech) => speech.Say("jobs.into", ("store", Plain.Line(store)));

    /// <summary>Also for the sheet.</summary>
    public static string TakeCare(IEnumerable<string> cautions, Speech speech) =>
        speech.Say("jobs.take-care", ("cautions", string.Join(" ", cautions.Select(caution => Plain.Line(speech.Catalogue(caution))))));

    private static string Late(BriefJob job, Instant by, LetterContext context) => job.Fallback is { } fallback
        ? context.Say("jobs.late.fallback", ("time", context.Times.Deadline(by)), ("fallback", Plain.Line(context.Speech.Catalogue(fallback))))
        : context.Say("jobs.late", ("time", context.Times.Deadline(by)));

    private static string? When(BriefJob job, LetterContext context) => (job.Start, job.StartBy) switch
    {
        (_, { } by) when context.Times.IsPast(by) => Late(job, by, context),
        ({ } start, { } by) => Start(start, by, context.Times, context.Speech),
        ({ } start, null) => context.Say("jobs.start", ("start", context.Times.NotBefore(start))),
        (null, { } by) => context.Say("jobs.last", ("time", context.Times.Deadline(by))),
        _ => null,
    };

    /// <summary>Also for the sheet.</summary>
    public static string Start(Instant start, Instant by, Times times, Speech speech) => by - start < NoTime
        ? speech.Say("jobs.start.no-time", ("start", times.NotBefore(start)))
        : speech.Say("jobs.start.last", ("start", times.NotBefore(start)), ("time", times.Deadline(by)));
}
