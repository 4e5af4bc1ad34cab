using StormClock.Core.Garden;
using StormClock.Service.Messages;

namespace StormClock.Service.Pictures;

/// <summary>What the picture shows, in words: for whoever does not see it, and beside it for everyone.</summary>
internal static class PictureText
{
    /// <summary>The gist, for a screen reader that comes upon the picture.</summary>
    public static string Summary(PictureModel model) => string.Join(' ', Head(model));

    public static string Of(PictureModel model) =>
        string.Join('\n', Head(model).Concat(model.Days.SelectMany(date => Day(model, date)))).Replace(Plain.Unbroken, ' ') + "\n";

    private static IEnumerable<string> Head(PictureModel model)
    {
        yield return $"{model.Title}.";
        yield return $"Now: {model.Times.Exact(model.Subject.Now)}.";
        if (model.Subject.LeaveBy is { } leave) yield return $"Leave by {model.Times.Exact(leave)}; the official order comes before all garden work.";
        foreach (var (work, stop) in model.Subject.Plan.WorkStops)
        {
            if (stop.Earliest is not { } earliest) continue;
            var likely = stop.Likely is { } then ? $", more likely from {model.Times.Deadline(then)}" : "";
            yield return $"{work} work could stop as early as {model.Times.Deadline(earliest)}{likely}.";
        }

        if (Chance(model) is { } chance) yield return chance;
    }

    private static string? Chance(PictureModel model) => model.Chance switch
    {
        [] => "No stop time can be named yet. It may come with any new forecast.",
        [var first] => $"The chance that ground work has stopped, if the wind comes, passes {Amounts.Chance(first.Share)} at {model.Times.Deadline(first.At)}.",
        [var first, .., var last] =>
            $"The chance that ground work has stopped, if the wind comes, passes {Amounts.Chance(first.Share)} at {model.Times.Deadline(first.At)} and {Amounts.Chance(last.Share)} at {model.Times.Deadline(last.At)}.",
    };

    private static IEnumerable<string> Day(PictureModel model, LocalDate date)
    {
        yield return "";
        yield return $"{PictureModel.DayName(date)}: {Light(model, date)}.";
        var jobs = model.Jobs.Where(job => model.IsOn(job.Job.Start, date)).ToList();
        if (jobs.Count == 0 && model.Lanes.Count > 0) yield return "- No job.";
        foreach (var (number, title, job) in jobs)
        {
            var people = Words.Together([.. job.People.Select(id => Plain.Line(model.Subject.Book.People.First(person => person.Id == id).Name))]);
            yield return $"- {number}. {title}: {people}, start {model.Times.NotBefore(job.Start)}, {Amounts.Minutes(job.Job.Minutes)}";
        }
    }

    private static string Light(PictureModel model, LocalDate date)
    {
        var (ground, other) = (Spans(model, date, WorkClass.Ground), Spans(model, date, WorkClass.Carry));
        if (ground.Length == 0) return "no light for work";
        return other.Length == 0 ? $"light for ground work {ground}" : $"light for ground work {ground}, for all other work {other}";
    }

    private static string Spans(PictureModel model, LocalDate date, WorkClass work) =>
        string.Join(" and ", model.Light(date, work).Select(Span));

    private static string Span((double From, double To) hours) => $"{Clock(hours.From)} to {Clock(hours.To)}";

    /// <summary>Whole minutes.</summary>
    private static string Clock(double hours)
    {
        var minutes = (int)Math.Round(hours * 60);
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{minutes / 60:00}:{minutes % 60:00}");
    }
}
