using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>What a thing is once a job is done on it.</summary>
/// <param name="OutOfWind">It is where no wind reaches it.</param>
/// <param name="MadeWorse">It fails at a lower gust than before, in dry soil or in saturated.</param>
public sealed record Treated(ItemShape Shape, ItemBuild Build, bool OutOfWind, bool MadeWorse);

/// <summary>What storm work does to a thing. Figures without a source are C and modest.</summary>
public static class JobEffect
{
    private const double RoundingShare = 1e-9;

    /// <summary>One piece after the job. Jobs that do nothing about wind leave it as it was.</summary>
    /// <param name="materials">For the whole line.</param>
    /// <param name="count">Pieces of the line.</param>
    public static Treated After(ItemShape shape, ItemBuild build, JobKind job, IReadOnlyList<MaterialNeed> materials, int count)
    {
        if (job is JobKind.Move or JobKind.TakeDown) return new(shape, build, OutOfWind: true, MadeWorse: false);
        if (job is JobKind.CoverOff) return CoverOff(shape, build);
        var (newShape, formed) = Worked(shape, build, job, materials, count);
        var done = formed with { HeldToMps = ObservedAfter.Mps(shape, build, newShape, formed, job) };
        return new(newShape, done, OutOfWind: false, Worse(shape, build, newShape, done));
    }

    private static (ItemShape Shape, ItemBuild Build) Worked(
        ItemShape shape, ItemBuild build, JobKind job, IReadOnlyList<MaterialNeed> materials, int count)
    {
        var weightKg = MaterialWords.WeightKg(materials, count);
        var keepsPosts = shape is ItemShape.Panel && build.Standing is Standing.OnPosts && job is not JobKind.LayFlat;
        var holdN = keepsPosts ? MaterialWords.GuysN(materials, count) : MaterialWords.HoldN(materials, count);
        return job switch
        {
            JobKind.LayFlat => LaidFlat.Of(shape, build, weightKg, holdN),
            JobKind.WeighDown => (shape, Steadied.Weighed(shape, build, weightKg > 0 || holdN > 0 ? weightKg : MaterialWords.UsualWeightKg, holdN)),
            JobKind.Tie or JobKind.Strap or JobKind.Bundle => (shape, Steadied.Tied(shape, build, job, weightKg, holdN)),
            JobKind.Fill => (shape, build with { Filled = 1 }),
            JobKind.Drain => (shape, build with { Filled = 0 }),
            JobKind.Soak => (shape, build with { MassKg = Heavier(build.MassKg, build.MassWetKg) }),
            JobKind.Prune => (shape, Pruned.Of(shape, build)),
            _ => (shape, build),
        };
    }

    /// <summary>Cloth off its frame, which stays; a cover without a frame of its own goes away altogether, and so does a loose sheet.</summary>
    private static Treated CoverOff(ItemShape shape, ItemBuild build)
    {
        const double BareFrameSolidity = 0.1, BareFrameHolds = 3;
        switch (shape)
        {
            case ItemShape.Cover when build.HeldToMps is null || build.Standing is Standing.Free or Standing.Lying:
            case ItemShape.Sheet:
                return new(shape, build, OutOfWind: true, MadeWorse: false);
            case ItemShape.Cover:
                return new(shape, build with { Solidity = BareFrameSolidity, HeldToMps = build.HeldToMps * BareFrameHolds }, false, false);
            case ItemShape.Panel:
                var bare = build with { Solidity = Math.Min(build.Solidity ?? 1, BareFrameSolidity), ClimberCover = null };
                bare = bare with { HeldToMps = ObservedAfter.Mps(shape, build, shape, bare, JobKind.CoverOff) };
                return new(shape, bare, OutOfWind: false, Worse(shape, build, shape, bare));
            default:
                return new(shape, build, OutOfWind: false, MadeWorse: false);
        }
    }

    private static bool Worse(ItemShape shape, ItemBuild build, ItemShape newShape, ItemBuild done) =>
        Worse(ItemLoads.Of(shape, build, Soil.Dry), ItemLoads.Of(newShape, done, Soil.Dry))
        || Worse(ItemLoads.Of(shape, build, Soil.Saturated), ItemLoads.Of(newShape, done, Soil.Saturated));

    private static bool Worse(ItemStrength? before, ItemStrength? after) =>
        before is not null && after is not null && after.First.GustMps < before.First.GustMps * (1 - RoundingShare);

    private static double? Heavier(double? dry, double? wet) => wet > dry ? wet : dry;
}
