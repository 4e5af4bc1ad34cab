using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What the planned work uses up, and what of it is short or does not fit.</summary>
internal static class Supplies
{
    /// <summary>What the planned work lacks by the book, and what people said is not there, whatever the book has.</summary>
    public static IReadOnlyList<Shortage> Short(PlanRequest request, IReadOnlyList<PlannedJob> planned)
    {
        var uses = planned.SelectMany(job => job.Job.Materials.Select(need => (Start: (Instant?)job.Start, Need: need, NotThere: 0.0)))
            .Concat(Answered.Missing(request).Select(need => (Start: (Instant?)null, Need: need, NotThere: need.Quantity)));
        return [.. uses
            .GroupBy(use => (use.Need.Material, use.Need.Unit))
            .Select(group => Compare(request.Book, group.Key.Material, group.Key.Unit, group.Sum(use => use.Need.Quantity), group.Sum(use => use.NotThere)) with { BuyBy = group.Min(use => use.Start) })
            .Where(shortage => shortage.Missing > 0)
            .OrderBy(shortage => shortage.Material, StringComparer.Ordinal)];
    }

    public static IReadOnlyList<StoreUse> Stores(PlanRequest request, IReadOnlyList<PlannedJob> planned, IReadOnlyList<LeftOutJob> leftOut) =>
        [.. request.Book.Stores.Select(store =>
        {
            var moved = planned.Select(job => job.Job).Where(job => job.StoreId == store.Id).ToList();
            var inside = moved.Concat(StoreRoom.Moved(request, store)).ToList();
            var usedM2 = inside.Sum(job => job.StoreFloorM2);
            var usedM3 = inside.Sum(job => job.StoreVolumeM3);
            return new StoreUse(store.Id, usedM2, store.FloorM2 - usedM2, usedM3, store.VolumeM3 - usedM3)
            {
                Jobs = [.. moved.Select(job => job.Id)],
                LeftOut = [.. leftOut.Select(left => left.Job).Where(job => job.StoreId == store.Id).Select(job => job.Id)],
            };
        })];

    private static Shortage Compare(GardenBook book, string material, string unit, double need, double notThere)
    {
        var have = book.Supplies.Where(supply => supply.Material == material && supply.Unit == unit).Sum(supply => supply.Quantity);
        return new(material, need, have, Math.Max(notThere, need - have), unit);
    }
}
