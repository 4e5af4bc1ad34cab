using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Things that are weighed down, tied, strapped or bundled.</summary>
internal static class Steadied
{
    // Where a job names nothing that holds (C).
    private const double UsualTieN = 100;
    private const double UsualStrapN = 300;

    // A stake steadies no trunk thicker than this (C).
    private const double StakedUpToStemM = 0.15;

    /// <summary>Weights lie on it or hang from it, kg; weighted sheets lie flush.</summary>
    public static ItemBuild Weighed(ItemShape shape, ItemBuild build, double weightKg, double holdN)
    {
        if (shape is ItemShape.Tree) return build;
        var heavier = build with
        {
            MassKg = ItemLoads.Known(build.MassKg) + weightKg,
            MassWetKg = ItemLoads.Known(build.MassWetKg) + weightKg,
        };
        if (shape is ItemShape.Sheet && weightKg > 0)
            heavier = heavier with { Drag = Math.Min(build.Drag ?? SheetLoads.FlushLift, SheetLoads.FlushLift) };
        return holdN > 0 ? Held(heavier, holdN, build.Standing) : heavier;
    }

    /// <summary>Ties, straps and bundles, with the weights that come with them.</summary>
    public static ItemBuild Tied(ItemShape shape, ItemBuild build, JobKind job, double weightKg, double holdN)
    {
        if (shape is ItemShape.Tree) return Staked(build);
        var usual = shape is ItemShape.Panel && build.Standing is Standing.OnPosts ? 0 : job is JobKind.Strap ? UsualStrapN : UsualTieN;
        var hold = holdN > 0 ? holdN : usual;
        var standing = job is JobKind.Strap ? Standing.Strapped : Standing.Tied;
        var weighed = Weighed(shape, build, weightKg, 0);
        return hold > 0 ? Held(weighed, hold, standing) : weighed;
    }

    /// <summary>What held it before still does; what stands loose is tied now. Fixings of unknown hold stay unknown.</summary>
    private static ItemBuild Held(ItemBuild build, double holdN, Standing? standing) =>
        build.Standing is Standing.Fastened && build.TieN is null
            ? build
            : build with
            {
                TieN = Holding.OfTies(build) + holdN,
                Standing = build.Standing is null or Standing.Free or Standing.Raised ? standing : build.Standing,
            };

    private static ItemBuild Staked(ItemBuild build) =>
        build.StemM is <= StakedUpToStemM && build.Standing is null or Standing.Free or Standing.Rooted or Standing.Tied
            ? build with { Standing = Standing.Staked }
            : build;
}
