using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>What a thing is once a job is done on it.</summary>
/// <param name="OutOfWind">It is where no wind reaches it.</param>
/// <param name="MadeWorse">It fails at a lower gust than before, in dry soil or in saturated.</param>
public sealed record Treated(ItemShape Shape, ItemBuild Build, bool OutOfWind, bool MadeWorse);

/// <summary>What storm work does to a thing.</summary>
public static class JobEffect
{
    public static Treated After(ItemShape shape, ItemBuild build, JobKind job, IReadOnlyList<MaterialNeed> materials, int count) =>
        new(shape, build, job is JobKind.Move or JobKind.TakeDown, false);
}
