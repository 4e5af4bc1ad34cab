using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>
/// Invented gardens and storms from a number, for the planner to be held against others: two sites with three areas each, hours of
/// the day, a stop for each class of work with members around it, jobs that wait for others, a store that may be too small.
/// </summary>
internal static class RandomGardens
{
    private static readonly LocalDate Day = new(2027, 9, 21);

    public static PlanRequest Request(int number, int jobs, int people, double hoursOfWork)
    {
        var random = new Random(number);
        Person[] crew = [.. Enumerable.Range(0, people).Select(i => Gardens.Person($"p{i}", i == 0 ? PersonRole.Gardener : PersonRole.Helper, Hours(random)) with { LiftKg = 20 + random.Next(20) })];
        var book = Book(random, jobs, crew);
        var now = Gardens.Zone.AtStrictly(Day.At(new LocalTime(random.Next(6, 12), 0))).ToInstant();
        var stops = new Dictionary<(string, WorkClass), StopTimes>();
        foreach (var workClass in Enum.GetValues<WorkClass>())
        {
            var likely = hoursOfWork * (0.6 + (0.15 * (int)workClass) + (0.3 * random.NextDouble()));
            foreach (var site in book.Sites) stops[(site.Id, workClass)] = Stop(random, now, likely + random.NextDouble());
        }

        return new(book, new Dictionary<string, JobState>(), stops, now, now + Duration.FromHours(120));
    }

    private static WorkHours[] Hours(Random random) =>
        [.. Enumerable.Range(0, 6).Select(day => Gardens.Hours(Day.PlusDays(day), random.Next(6, 12), 0, random.Next(15, 21), 0))];

    private static StopTimes Stop(Random random, Instant now, double likelyHours)
    {
        var spread = likelyHours * (0.1 + (0.15 * random.NextDouble()));
        float[] arrivals = [.. Enumerable.Range(0, 200).Select(_ => (float)Math.Max(0.1, likelyHours + (spread * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5))))];
        return new(MemberTimes.Of(arrivals, [.. arrivals.Select(hours => hours + 12)], 0), now, now, null);
    }

    private static GardenBook Book(Random random, int count, Person[] crew)
    {
        Area[] areas = [.. Enumerable.Range(0, 6).Select(i => new Area($"area{i}", $"Area {i}", i % 3 == 2 ? "far" : "home", Exposure.Open))];
        var ids = new List<string>();
        Item[] items = [.. Enumerable.Range(0, count).Select(i =>
        {
            var job = Job(random, i, ids, crew.Length);
            ids.Add(job.Id);
            return new Item($"item{i:00}", $"Item {i}", "tall_crop", areas[random.Next(areas.Length)].Id, 1 + random.Next(6), 0, [], [job])
            {
                Build = ItemBuild.Unknown with { MassKg = random.Next(3) == 0 ? random.Next(5, 40) : null },
            };
        })];
        return new("random", "Random", Gardens.Zone, UnitSystem.Metric, false, crew, [Gardens.Home, Gardens.Far], areas, items, [], [new("shed", "Shed", "home", count * 0.15, count * 0.2)], WorkLimit.Defaults);
    }

    private static Job Job(Random random, int i, List<string> earlier, int people)
    {
        var moved = random.Next(5) == 0;
        return new(
            $"item{i:00}/job", $"item{i:00}", moved ? JobKind.Move : JobKind.Tie, 5 * random.Next(2, 20), people > 1 && random.Next(5) == 0 ? 2 : 1,
            (WorkClass)random.Next(5), earlier.Count > 0 && random.Next(5) == 0 ? [earlier[random.Next(earlier.Count)]] : [],
            random.Next(5, 100), random.Next(5) == 0 ? random.Next(20, 200) : 0, [], moved ? "shed" : null, moved ? 0.3 + random.NextDouble() : 0, moved ? 0.3 + random.NextDouble() : 0,
            "leave it", null, random.Next(8) == 0);
    }
}
