using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What the planned work uses up, and what of it is short or does not fit.</summary>
internal static class Supplies
{
    public static IReadOnlyList<Shortage> Short(GardenBook book, IEnumerable<Job> jobs) =>
        [.. jobs
            .SelectMany(job => job.Materials)
            .GroupBy(need => (need.Material, need.Unit))
            .Select(group => Compare(book, group.Key.Material, group.Key.Unit, group.Sum(need => need.Quantity)))
            .Where(shortage => shortage.Missing > 0)
            .OrderBy(shortage => shortage.Material, StringComparer.Ordinal)];

    public static IReadOnlyList<StoreUse> Stores(GardenBook book, IReadOnlyCollection<Job> jobs) =>
        [.. book.Stores.Select(store =>
        {
            var moved = jobs.Where(job => job.StoreId == store.Id).ToList();
            var usedM2 = moved.Sum(job => job.StoreFloorM2);
            var usedM3 = moved.Sum(job => job.StoreVolumeM3);
            return new StoreUse(store.Id, usedM2, store.FloorM2 - usedM2, usedM3, store.VolumeM3 - usedM3);
        })];

    private static Shortage Compare(GardenBook book, string material, string unit, double need)
    {
        var have = book.Supplies.Where(supply => supply.Material == material && supply.Unit == unit).Sum(supply => supply.Quantity);
        return new(material, need, have, Math.Max(0, need - have), unit);
    }
}
