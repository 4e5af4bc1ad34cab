using StormClock.Core.Garden;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

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
        var (speech, times) = (model.Speech, model.Times);
        yield return $"{model.Title}.";
        yield return speech.Say("picture.text.now", ("time", times.Exact(model.Subject.Now)));
        if (model.Subject.LeaveBy is { } leave) yield return speech.Say("picture.text.leave-by", ("time", times.Exact(leave)));
        foreach (var (work, stop) in model.Subject.Plan.WorkStops)
        {
            if (stop.Earliest is not { } earliest) continue;
            var name = Words.Capital(Words.Of(work, speech));
            yield return stop.Likely is { } likely
                ? speech.Say("picture.text.stop.likely", ("work", name), ("time", times.Deadline(earliest)), ("likely", times.Deadline(likely)))
                : speech.Say("picture.text.stop", ("work", name), ("time", times.Deadline(earliest)));
        }

        if (Chance(model) is { } chance) yield return chance;
    }

    private static string? Chance(PictureModel model) => model.Chance switch
    {
        [] => model.Speech.Say("stop.none"),
        [var first] => model.Speech.Say("picture.text.chance", ("chance", Amounts.Chance(first.Share, model.Speech)), ("time", model.Times.Deadline(first.At))),
        [var first, .., var last] => model.Speech.Say(
            "picture.text.chances",
            ("chance", Amounts.Chance(first.Share, model.Speech)), ("time", model.Times.Deadline(first.At)),
            ("next", Amounts.Chance(last.Share, model.Speech)), ("later", model.Times.Deadline(last.At))),
    };

    private static IEnumerable<string> Day(PictureModel model, LocalDate date)
    {
        yield return "";
        yield return $"{model.DayName(date)}: {Light(model, date)}.";
        var jobs = model.Jobs.Where(job => model.IsOn(job.Job.Start, date)).ToList();
        if (jobs.Count == 0 && model.Lanes.Count > 0) yield return model.Speech.Say("picture.text.no-job");
        foreach (var (number, title, job) in jobs)
        {
            var people = Words.Together([.. job.People.Select(id => Plain.Line(model.Subject.Book.People.First(person => person.Id == id).Name))], model.Speech);
            yield return model.Speech.Say(
                "picture.text.job",
                ("number", number), ("title", title), ("people", people), ("start", model.Times.NotBefore(job.Start)), ("minutes", Amounts.Minutes(job.Job.Minutes)));
        }
    }

    private static string Light(PictureModel model, LocalDate date)
    {
        var (ground, other) = (Spans(model, date, WorkClass.Ground), Spans(model, date, WorkClass.Carry));
        if (ground.Length == 0) return model.Speech.Say("picture.text.no-light");
        return other.Length == 0
            ? model.Speech.Say("picture.text.ground-light", ("ground", ground))
            : model.Speech.Say("picture.text.light", ("ground", ground), ("other", other));
    }

    private static string Spans(PictureModel model, LocalDate date, WorkClass work) =>
        Words.Together([.. model.Light(date, work).Select(span => Span(span, model.Speech))], model.Speech);

    private static string Span((double From, double To) hours, Speech speech) =>
        speech.Say("picture.text.span", ("from", Clock(hours.From, speech)), ("to", Clock(hours.To, speech)));

    /// <summary>Whole minutes; the end of the day is 24:00 where the day has 24 hours.</summary>
    private static string Clock(double hours, Speech speech)
    {
        var minutes = (int)Math.Round(hours * 60);
        return minutes == 24 * 60 && speech.Clock == ClockForm.Hours24 ? "24:00" : Dates.Clock(LocalTime.FromMinutesSinceMidnight(minutes % (24 * 60)), speech);
    }
}
