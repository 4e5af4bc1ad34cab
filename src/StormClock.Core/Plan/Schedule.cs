using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>Time already given, and the search for the next piece of it, on a grid of five minutes.</summary>
internal sealed class Schedule(PlanRequest request)
{
    private static readonly Duration Step = Duration.FromMinutes(5);

    /// <summary>The last round is not begun sooner than this before its work stops (convention; science.md 4.3).</summary>
    private static readonly Duration LastRoundLead = Duration.FromHours(12);

    private readonly Dictionary<string, PersonCalendar> calendars =
        request.Book.People.ToDictionary(person => person.Id, _ => new PersonCalendar((from, to) => Travel(request.Book, from, to)));

    private readonly Dictionary<(string, string, WorkClass), IReadOnlyList<Interval>> windows = [];

    public List<PlannedSlot> Slots { get; } = [];

    /// <summary>Gives the job the earliest time that its people, light, hours and stop allow; false when there is none.</summary>
    public bool PlaceEarliest(Job job)
    {
        var stop = request.StopOf(job);
        var ready = Ready(job);
        return job.LastRound
            ? (Place(job, TeamsFor(job), LastRoundStart(job, ready), stop, latest: false) ?? Place(job, TeamsFor(job), ready, stop, latest: true)) is not null
            : Place(job, TeamsFor(job), ready, stop, latest: false) is not null;
    }

    /// <summary>Gives the job, with the people it has, the latest time that ends by <paramref name="before"/>; null when there is none.</summary>
    public Instant? PlaceLatest(PlannedSlot slot, Instant before) =>
        Place(slot.Job, [[.. slot.People.Select(id => request.Book.People.First(person => person.Id == id))]], request.Now, before, latest: true)?.Start;

    /// <summary>Whether the job would fit if nothing else had to be done.</summary>
    public bool CouldEverFit(Job job) => TeamsFor(job).Any(team => Starts(job, team, request.Now, request.StopOf(job), latest: false).Any());

    /// <summary>Every group of people that can do the job, in the order of the book.</summary>
    public IReadOnlyList<IReadOnlyList<Person>> TeamsFor(Job job)
    {
        var people = request.Book.People.Where(person => person.Role != PersonRole.Keeper).ToList();
        return job.People switch
        {
            1 => [.. people.Where(person => job.Class is not WorkClass.Ladder || person.LadderAlone).Select(person => (IReadOnlyList<Person>)[person])],
            2 => [.. people.SelectMany((first, i) => people.Skip(i + 1).Select(second => (IReadOnlyList<Person>)[first, second]))],
            _ when people.Count >= job.People => [people.Take(job.People).ToList()],
            _ => [],
        };
    }

    private PlannedSlot? Place(Job job, IReadOnlyList<IReadOnlyList<Person>> teams, Instant from, Instant until, bool latest)
    {
        var siteId = SiteOf(job).Id;
        var length = Duration.FromMinutes(job.Minutes);
        var found = teams
            .SelectMany(team => Starts(job, team, from, until, latest)
                .Where(start => team.All(person => calendars[person.Id].IsFree(start, start + length, siteId)))
                .Take(1)
                .Select(start => new PlannedSlot(job, [.. team.Select(person => person.Id)], start, start + length)));
        var best = latest ? found.MaxBy(slot => slot.Start) : found.MinBy(slot => slot.Start);
        if (best is null) return null;
        foreach (var person in best.People) calendars[person].Book(best.Start, best.End, siteId);
        Slots.Add(best);
        return best;
    }

    /// <summary>Grid starts at which the whole team has a window for the class, in order of preference.</summary>
    private IEnumerable<Instant> Starts(Job job, IReadOnlyList<Person> team, Instant from, Instant until, bool latest)
    {
        var length = Duration.FromMinutes(job.Minutes);
        var first = team[0];
        var others = team.Skip(1).ToList();
        var open = WindowsOf(first, job);
        foreach (var window in latest ? open.Reverse() : open)
        {
            var start = RoundUp(Instant.Max(window.Start, from));
            var end = Instant.Min(window.End, until);
            var count = (long)Math.Floor((end - start - length) / Step) + 1;
            for (var i = 0L; i < count; i++)
            {
                var at = start + (Step * (latest ? count - 1 - i : i));
                if (others.All(person => WindowsOf(person, job).Any(w => w.Start <= at && at + length <= w.End))) yield return at;
            }
        }
    }

    private Instant Ready(Job job) =>
        Slots.Where(slot => job.After.Contains(slot.Job.Id)).Select(slot => slot.End).Append(request.Now).Max();

    /// <summary>The last round waits for the last work day before its stop, or its last hours, whichever is sooner.</summary>
    private Instant LastRoundStart(Job job, Instant ready)
    {
        var lastDay = request.Book.People
            .SelectMany(person => WindowsOf(person, job))
            .Where(window => window.Duration >= Duration.FromMinutes(job.Minutes))
            .Select(window => window.Start)
            .DefaultIfEmpty(ready)
            .Max();
        return Instant.Max(ready, Instant.Min(lastDay, request.StopOf(job) - LastRoundLead));
    }

    private IReadOnlyList<Interval> WindowsOf(Person person, Job job)
    {
        var site = SiteOf(job);
        var key = (person.Id, site.Id, job.Class);
        if (windows.TryGetValue(key, out var known)) return known;
        return windows[key] = WorkWindows.For(request.Book, person, site, job.Class, request.Now, request.StopOf(job));
    }

    private Site SiteOf(Job job) => request.Book.SiteOf(request.Book.AreaOf(request.Book.ItemOf(job)));

    private static Duration Travel(GardenBook book, string from, string to) =>
        Duration.FromMinutes(book.Sites.First(site => site.Id == from).TravelMinutes.GetValueOrDefault(to));

    private static Instant RoundUp(Instant at)
    {
        var step = (long)Step.TotalSeconds;
        return Instant.FromUnixTimeSeconds((at.ToUnixTimeSeconds() + step - 1) / step * step);
    }
}

/// <summary>A job with its people and time.</summary>
internal sealed record PlannedSlot(Job Job, IReadOnlyList<string> People, Instant Start, Instant End);
