using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Garden;

/// <summary>Small invented gardens for tests: one site at a place where the sun rises and sets at plain hours.</summary>
internal static class Gardens
{
    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];

    public static readonly Site Home = new("home", "Home plot", new(30, -80), Terrain.Suburb, new Dictionary<string, int> { ["far"] = 20 }, []);

    public static readonly Site Far = new("far", "Far plot", new(30.01, -80), Terrain.Suburb, new Dictionary<string, int> { ["home"] = 20 }, []);

    public static Person Person(string id, PersonRole role = PersonRole.Gardener, params WorkHours[] hours) =>
        new(id, id, $"{id}@example.invalid", role, hours, [], 20, true);

    public static WorkHours Hours(LocalDate date, int fromHour, int fromMinute, int toHour, int toMinute) =>
        new([], date, new(fromHour, fromMinute), new(toHour, toMinute));

    public static Job Job(string id, int minutes, WorkClass workClass = WorkClass.Ground, int people = 1, double value = 10, params string[] after) =>
        new(id, "item", JobKind.Tie, minutes, people, workClass, after, value, 0, [], null, 0, 0, null, JobKind.Untie, false);

    public static GardenBook With(IReadOnlyList<Person> people, params Job[] jobs)
    {
        Item item = new("item", "Item", "tall_crop", "bed", 1, 0, [], [.. jobs.Where(job => job.ItemId == "item")]);
        Item far = new("far-item", "Far item", "tall_crop", "far-bed", 1, 0, [], [.. jobs.Where(job => job.ItemId == "far-item")]);
        return new(
            "plot", "Plot", Zone, UnitSystem.Metric, false, people, [Home, Far],
            [new("bed", "Bed", "home", Exposure.Open), new("far-bed", "Far bed", "far", Exposure.Open)],
            [item, far], [], [], WorkLimit.Defaults);
    }
}
