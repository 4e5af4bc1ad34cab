using StormClock.Core.Garden;
using StormClock.Core.Tests.Hazards;

namespace StormClock.Benchmarks;

/// <summary>Invented gardens: one of the size of the larger practice garden (two sites, two people, 60 jobs), and a very large one.</summary>
internal static class BenchGarden
{
    private static readonly JobKind[] Kinds = [JobKind.Tie, JobKind.LayFlat, JobKind.Move, JobKind.TakeDown, JobKind.WeighDown];

    public static GardenBook Book { get; } = Make(40, [Person("gardener", PersonRole.Gardener, 7, 12), Person("helper", PersonRole.Helper, 9, 18)]);

    /// <summary>300 jobs, six people.</summary>
    public static GardenBook Large { get; } =
        Make(200, [.. Enumerable.Range(0, 6).Select(i => Person($"person-{i}", i == 0 ? PersonRole.Gardener : PersonRole.Helper, 7 + i % 3, 15 + i))]);

    private static GardenBook Make(int items, IReadOnlyList<Person> people)
    {
        var at = SampleStorms.FortMyers;
        return new(
            "bench", "Bench", DateTimeZoneProviders.Tzdb["America/New_York"], UnitSystem.UsCustomary, true,
            people,
            [
                new("house", "House", at, Terrain.Suburb, new Dictionary<string, int> { ["field"] = 15 }, []),
                new("field", "Field", new(at.LatDeg + 0.1, at.LonDeg + 0.05), Terrain.OpenFarmland, new Dictionary<string, int> { ["house"] = 15 }, []),
            ],
            [.. Enumerable.Range(0, 8).Select(i => new Area($"area-{i}", $"Area {i}", i % 3 == 0 ? "field" : "house", Exposure.Open))],
            [.. Enumerable.Range(0, items).Select(ItemOf)],
            [new("cord", 60, "m")],
            [new("shed", "Shed", "house", 6, 12)],
            WorkLimit.Defaults);
    }

    private static Person Person(string id, PersonRole role, int from, int to) =>
        new(id, id, null, role, [new(Enum.GetValues<IsoDayOfWeek>()[1..], null, new(from, 0), new(to, 30))], [], 20, true);

    /// <summary>Every second item has a second job that waits for its first.</summary>
    private static Item ItemOf(int i)
    {
        var id = $"item-{i:00}";
        var first = JobOf(id, i, Kinds[i % Kinds.Length], []);
        Job[] jobs = i % 2 == 0 ? [first] : [first, JobOf(id, i + 3, JobKind.Strap, [first.Id])];
        return new(id, id, "tall_crop", $"area-{i % 8}", 1 + i % 4, 20 + 7 * i % 90, [], jobs);
    }

    private static Job JobOf(string itemId, int i, JobKind kind, IReadOnlyList<string> after)
    {
        var moved = kind == JobKind.Move;
        return new(
            $"{itemId}/{kind}", itemId, kind, 10 + 5 * (i % 7), i % 6 == 0 ? 2 : 1, (WorkClass)(i % 5), after, 20 + 7 * i % 90, i % 9 == 0 ? 40 : 0,
            kind == JobKind.Tie ? [new("cord", 4, "m")] : [], moved ? "shed" : null, moved ? 0.5 : 0, moved ? 0.4 : 0,
            "lay it flat", kind == JobKind.Tie ? JobKind.Untie : null, i % 11 == 0);
    }
}
