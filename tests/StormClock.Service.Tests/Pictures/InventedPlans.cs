using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Books;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Pictures;

/// <summary>Plans made by a simple rule and not by the planner, so that a better planner changes no picture.</summary>
internal static class InventedPlans
{
    /// <summary>Sunday 19 September 2027, 05:00 EDT.</summary>
    public static Instant Now { get; } = Instant.FromUtc(2027, 9, 19, 9, 0);

    public static GardenBook TernHook { get; } = Garden("tern-hook");

    public static GardenBook SaltbushCourt { get; } = Garden("saltbush-court");

    /// <summary>Every job of the book, one after another for whoever is needed, each day from 08:00 for ten hours.</summary>
    public static GardenPlan Of(GardenBook book)
    {
        var free = book.People.ToDictionary(person => person.Id, _ => Morning(book, 0));
        return Empty with { Jobs = [.. book.Jobs.Select(job => Planned(book, job, free))], WorkStops = Stops, LeftOut = [], Buy = [], Stores = [] };
    }

    public static GardenPlan Empty { get; } = new(Now, new Dictionary<WorkClass, WorkStop>(), [], [], [], []);

    public static IReadOnlyDictionary<WorkClass, WorkStop> Stops { get; } = new Dictionary<WorkClass, WorkStop>
    {
        [WorkClass.Sheet] = new(Hours(62), Hours(75)),
        [WorkClass.Ladder] = new(Hours(61), Hours(74)),
        [WorkClass.Saw] = new(Hours(64), Hours(75)),
        [WorkClass.Carry] = new(Hours(80), Hours(90)),
        [WorkClass.Ground] = new(Hours(81.5), Hours(92)),
    };

    /// <summary>The book with so many items, each with one job of 12 minutes for one person.</summary>
    public static GardenBook Long(int count) => TernHook with
    {
        Items =
        [
            .. Enumerable.Range(1, count).Select(at =>
            {
                var item = TernHook.Items[at % TernHook.Items.Count];
                var job = item.Jobs[0] with { Id = $"thing-{at}/tie", ItemId = $"thing-{at}", Minutes = 12, People = 1, After = [], Fallback = $"leave thing {at}" };
                return item with { Id = $"thing-{at}", Name = $"Thing {at} of many, with a name that goes on for a while", Jobs = [job] };
            }),
        ],
    };

    public static Instant Hours(double after) => Now + Duration.FromHours(after);

    private static PlannedJob Planned(GardenBook book, Job job, Dictionary<string, Instant> free)
    {
        List<string> people = [.. free.OrderBy(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal).Take(job.People).Select(pair => pair.Key)];
        var start = people.Max(person => free[person]);
        var end = start + Duration.FromMinutes(job.Minutes);
        var day = Period.DaysBetween(Now.InZone(book.Zone).Date, start.InZone(book.Zone).Date);
        if (end > Morning(book, day) + Duration.FromHours(10))
        {
            start = Morning(book, day + 1);
            end = start + Duration.FromMinutes(job.Minutes);
        }

        foreach (var person in people) free[person] = end;
        return new(job, people, start, end, start + Duration.FromHours(1), 0.97);
    }

    private static Instant Morning(GardenBook book, int day) => Now.InZone(book.Zone).Date.PlusDays(day).At(new(8, 0)).InZoneLeniently(book.Zone).ToInstant();

    private static GardenBook Garden(string id) => GardenReader.Read(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", $"garden-{id}.yaml")), id).Value!;
}
