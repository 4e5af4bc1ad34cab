using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What the planned work uses up, and what of it is short or does not fit.</summary>
internal static class Supplies
{
    /// <summary>What the planned work lacks by the book, and what people said is not there, whatever the book has.</summary>
    public static IReadOnlyList<Shortage> Short(PlanRequest request, IReadOnlyList<PlannedJob> planned)
    {
        var needs = planned.SelectMany(job => job.Job.Materials.Select(need => (Start: (Instant?)job.Start, Need: need)))
            .Concat(Answered.Missing(request).Select(need => (Start: (Instant?)null, Need: need)));
        return [.. needs
            .GroupBy(use => (use.Need.Material, use.Need.Unit), use => (use.Start, use.Need.Quantity))
            .Select(uses => Compare(request.Book, uses.Key.Material, uses.Key.Unit, [.. uses.OrderBy(use => use.Start)]))
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

    /// <param name="uses">Those of jobs left out for want of it have no start.</param>
    private static Shortage Compare(GardenBook book, string material, string unit, List<(Instant? Start, double Quantity)> uses)
    {
        var have = book.Supplies.Where(supply => supply.Material == material && supply.Unit == unit).Sum(supply => supply.Quantity);
        var need = uses.Sum(use => use.Quantity);
        var notThere = uses.Where(use => use.Start is null).Sum(use => use.Quantity);
        var used = 0.0;
        var first = uses.FirstOrDefault(use => use.Start is not null && (used += use.Quantity) > have);
        return new(material, need, have, Math.Max(notThere, need - have), unit) { NeededAt = first.Start };
    }
}
