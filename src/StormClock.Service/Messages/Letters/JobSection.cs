using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>Jobs in the order given, under the site and area they are at, numbered through.</summary>
internal static class JobSection
{
    /// <summary>Two times less than two roundings apart would read the wrong way round.</summary>
    private static readonly Duration NoTime = Duration.FromMinutes(30);

    public static IEnumerable<Block> Of(string heading, LetterContext context)
    {
        var jobs = context.Jobs;
        if (jobs.Count == 0) yield break;

        yield return new Heading(heading);
        if (jobs.Any(job => job.StartBy is not null))
        {
            yield return new Paragraph("Begun by its last start, each job ends in time in 9 cases of 10.");
        }

        var place = "";
        for (var i = 0; i < jobs.Count; i++)
        {
            var here = Words.Place(jobs[i]);
            if (here != place) yield return new Place(place = here);

            yield return new Entry(i + 1, Words.Title(jobs[i]), [.. Details(jobs[i], context)]);
        }
    }

    private static IEnumerable<string> Details(BriefJob job, LetterContext context)
    {
        if (Effort(job) is { Length: > 0 } effort) yield return effort;
        if (job.Bring.Count > 0) yield return "Bring " + string.Join(", ", job.Bring.Select(need => Bring(need, context)));
        if (When(job, context.Times) is { } when) yield return when;
        if (job.Why is { } why) yield return Words.Capital(Plain.Line(why));
    }

    /// <summary>Minutes and people, as far as they are planned: a look after the storm has neither.</summary>
    private static string Effort(BriefJob job)
    {
        string[] parts = [job.Minutes > 0 ? Amounts.Minutes(job.Minutes) : "", Words.Together([.. job.PeopleNames.Select(Plain.Line)])];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    private static string Bring(Core.Garden.MaterialNeed need, LetterContext context) =>
        $"{Words.Token(need.Material)} {Amounts.Of(need.Quantity, need.Unit, context.Brief.Units)}";

    private static string IfNot(BriefJob job) =>
        job.Fallback is { } fallback ? $"; if it cannot be: {Plain.Line(fallback)}" : ", or leave it";

    private static string? When(BriefJob job, Times times) => (job.Start, job.StartBy) switch
    {
        (_, { } by) when times.IsPast(by) => $"Late: the last start was {times.Deadline(by)}. Do it first{IfNot(job)}",
        ({ } start, { } by) when by - start < NoTime => $"Start {times.NotBefore(start)}, no time to spare",
        ({ } start, { } by) => $"Start {times.NotBefore(start)}, last start {times.Deadline(by)}",
        ({ } start, null) => $"Start {times.NotBefore(start)}",
        (null, { } by) => $"Last start {times.Deadline(by)}",
        _ => null,
    };
}
