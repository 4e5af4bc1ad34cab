using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Pictures;

/// <summary>What a picture is made of.</summary>
/// <param name="LeaveBy">A leave-by time that stands; null when none does.</param>
/// <param name="Speech">How its reader is spoken to.</param>
public sealed record PictureSubject(GardenBook Book, GardenPlan Plan, Instant Now, Instant? LeaveBy, Speech Speech)
{
    /// <summary>The same without people and their hours, for whoever may look.</summary>
    public PictureSubject WithoutWork => this with { Book = Book with { People = [] }, Plan = Plan with { Jobs = [] } };
}

/// <summary>A job in one person's lane.</summary>
/// <param name="Number">Its place in the working order, from 1.</param>
internal sealed record Bar(int Number, string Title, int Lane, Instant Start, Instant End);

/// <param name="Dashed">More likely than at the earliest.</param>
internal sealed record Line(Instant At, string Words, string Short, double Width, bool Dashed);

/// <param name="Share">0 to 1: of the members in which it comes, those in which ground work has stopped.</param>
internal sealed record ChancePoint(Instant At, double Share);

/// <summary>The content of the picture and of the text beside it, before anything is laid out.</summary>
internal sealed class PictureModel
{
    /// <summary>Forecasts reach five days.</summary>
    private const int MostDays = 6;

    public PictureModel(PictureSubject subject)
    {
        Subject = subject;
        Times = new(Zone, subject.Now, Speech);
        Jobs = [.. subject.Plan.InWorkingOrder().Select(entry => (entry.Number, Words.Title(BriefLines.Line(subject.Book, entry.Job.Job), Speech), entry.Job))];
        var lanes = subject.Book.People.Select((person, at) => (person.Id, at)).ToDictionary(pair => pair.Id, pair => pair.at);
        Bars = [.. Jobs.SelectMany(entry => entry.Job.People.Select(person => new Bar(entry.Number, entry.Title, lanes[person], entry.Job.Start, entry.Job.End)))];
        Lines = [.. LinesOf(subject).OrderBy(line => line.At)];
        Days = DaysOf();
    }

    public PictureSubject Subject { get; }

    public Speech Speech => Subject.Speech;

    public Times Times { get; }

    /// <summary>In working order.</summary>
    public IReadOnlyList<(int Number, string Title, PlannedJob Job)> Jobs { get; }

    public IReadOnlyList<Bar> Bars { get; }

    public IReadOnlyList<Line> Lines { get; }

    /// <summary>From today to the day of the last thing shown.</summary>
    public IReadOnlyList<LocalDate> Days { get; }

    /// <summary>The day of the last job, or on which all work could stop.</summary>
    public LocalDate LastWorkDay =>
        Jobs.Select(job => job.Job.End).Append(Subject.LeaveBy ?? Ground?.Earliest ?? Subject.Now).Max().InZone(Zone).Date;

    public IReadOnlyList<string> Lanes => [.. Subject.Book.People.Select(person => Plain.Line(person.Name))];

    public DateTimeZone Zone => Subject.Book.Zone;

    public WorkStop? Ground => Subject.Plan.WorkStops.GetValueOrDefault(WorkClass.Ground);

    public string Title => Speech.Say(
        "picture.title", ("garden", Plain.Line(Subject.Book.Name)), ("from", DayName(Days[0])), ("to", DayName(Days[^1])));

    /// <summary>What is known of the chance over time: the earliest reasonable stop is the tenth, the most likely one the half.</summary>
    public IReadOnlyList<ChancePoint> Chance => Ground switch
    {
        { Earliest: { } earliest, Likely: { } likely } => [new(earliest, 0.1), new(Instant.Max(earliest, likely), 0.5)],
        { Earliest: { } earliest } => [new(earliest, 0.1)],
        _ => [],
    };

    public string DayName(LocalDate date) => Dates.ShortDay(date, Speech);

    /// <summary>Hours of light for a class of work on a date; in a high summer a day's light can end after midnight.</summary>
    public IReadOnlyList<(double From, double To)> Light(LocalDate date, WorkClass work) =>
    [
        .. from day in (LocalDate[])[date.PlusDays(-1), date, date.PlusDays(1)]
           let light = WorkLight.On(day, Subject.Book.Sites[0].At, Zone, work)
           where light is not null
           let span = (From: Hours(light.Value.Start, date), To: Hours(light.Value.End, date))
           where span.To > span.From
           select span,
    ];

    /// <summary>Hours of the local day at which an instant lies; 0 or 24 when on another day.</summary>
    public double Hours(Instant at, LocalDate date)
    {
        var local = at.InZone(Zone).LocalDateTime;
        if (local.Date != date) return local.Date < date ? 0 : 24;
        return local.TimeOfDay.TickOfDay / (double)NodaConstants.TicksPerHour;
    }

    public bool IsOn(Instant at, LocalDate date) => at.InZone(Zone).Date == date;

    /// <summary>The bars of one day and lane with their hours, in order.</summary>
    public IEnumerable<(Bar Bar, double From, double To)> On(LocalDate date, int lane) =>
        from bar in Bars
        where bar.Lane == lane
        let span = (From: Hours(bar.Start, date), To: Hours(bar.End, date))
        where span.To > span.From
        orderby span.From
        select (bar, span.From, span.To);

    private static IEnumerable<Line> LinesOf(PictureSubject subject)
    {
        var speech = subject.Speech;
        yield return new(subject.Now, speech.Say("picture.now"), speech.Say("picture.now"), 2.5, false);
        if (subject.LeaveBy is { } leave) yield return new(leave, speech.Say("picture.leave-by"), speech.Say("picture.leave"), 2.5, false);
        var stops = subject.Plan.WorkStops;
        if (stops.Count > 1 && stops.Values.Select(stop => stop.Earliest).Distinct().ToList() is [{ } together])
        {
            yield return new(together, speech.Say("picture.all-stop"), speech.Say("picture.all"), 1.4, false);
        }
        else
        {
            foreach (var (work, stop) in stops)
            {
                if (stop.Earliest is { } earliest)
                    yield return new(earliest, speech.Say("picture.stop", ("work", Words.Of(work, speech))), speech.Word("picture.work", work), 1.4, false);
            }
        }

        if (stops.GetValueOrDefault(WorkClass.Ground) is { Earliest: { } first, Likely: { } likely } && likely > first)
        {
            yield return new(likely, speech.Say("picture.ground-likely"), speech.Say("picture.likely"), 1.4, true);
        }
    }

    private IReadOnlyList<LocalDate> DaysOf()
    {
        var first = Subject.Now.InZone(Zone).Date;
        var last = Subject.Plan.Jobs.Select(job => job.End).Concat(Lines.Select(line => line.At)).Max().InZone(Zone).Date;
        var count = Math.Min(MostDays, Period.DaysBetween(first, last) + 1);
        return [.. Enumerable.Range(0, count).Select(first.PlusDays)];
    }
}
