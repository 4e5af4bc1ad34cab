using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>What is still free in the stores once the things already moved are in them.</summary>
internal static class StoreRoom
{
    public static double FloorM2(PlanRequest request, StorePlace store) =>
        (store.FloorM2 ?? double.PositiveInfinity) - Moved(request, store).Sum(job => job.StoreFloorM2);

    public static double VolumeM3(PlanRequest request, StorePlace store) =>
        (store.VolumeM3 ?? double.PositiveInfinity) - Moved(request, store).Sum(job => job.StoreVolumeM3);

    /// <summary>Whether the job's things go in when nothing else does.</summary>
    public static bool Holds(PlanRequest request, Job job) =>
        request.Book.Stores.FirstOrDefault(store => store.Id == job.StoreId) is not { } store
        || (job.StoreFloorM2 <= FloorM2(request, store) + 1e-9 && job.StoreVolumeM3 <= VolumeM3(request, store) + 1e-9);

    /// <summary>Whether one piece goes through the door of its store, by what the gardener wrote of it.</summary>
    public static bool Passes(PlanRequest request, Job job) =>
        !(request.Book.ItemOf(job).Written.NarrowestM > request.Book.Stores.FirstOrDefault(store => store.Id == job.StoreId)?.DoorM);

    /// <summary>Jobs whose things are in the store already.</summary>
    public static IEnumerable<Job> Moved(PlanRequest request, StorePlace store) =>
        request.Book.Jobs.Where(job => job.StoreId == store.Id && request.Is(job, JobProgress.Done));
}
