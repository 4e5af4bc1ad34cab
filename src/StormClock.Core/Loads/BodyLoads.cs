using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Things that stand on their foot: slide or tip.</summary>
internal static class BodyLoads
{
    // Between a round smooth pot at 0.7 and a box at 1.3 (C).
    private const double UsualDrag = 1.0;

    // Short upright cylinder, 0.6 to 0.9 (trade.md 2.2, M).
    private const double PotDrag = 0.8;

    // A potted crown in leaf at 15 m/s; held there, though leaves fold in more wind (science.md 5.2, M).
    private const double CrownDrag = 0.5;

    // Pots are wider than their foot: 0.42 m on 0.36, 0.4 on 0.34 (trade.md 11, check 11; D).
    private const double PotOverFoot = 1.15;

    public static (List<Failure> Modes, double CentreM) Of(ItemBuild build, Soil soil)
    {
        if (MassKg(build, soil) is not { } massKg || FootM(build) is not { } footM) return ([], 0);
        var faces = Faces(build, footM);
        var dragArea = faces.Sum(face => face.DragAreaM2);
        var dragMoment = faces.Sum(face => face.DragMomentM3);
        if (!(dragMoment > 0)) return ([], 0);

        var held = Holding.Of(build, soil);
        var tie = new Tie(held, footM);
        var beta = held > 0 ? Fragility.BetaTied : Fragility.BetaRigid;
        var friction = Friction.Of(ItemLoads.Known(build.Friction), build.Surface, soil);
        return (
            [
                new(FailureMode.Slides, Footing.SlidesAtMps(massKg, friction, dragArea, tie), beta),
                new(FailureMode.Tips, Footing.TipsAtMps(massKg, footM / 2, dragMoment, tie), beta),
            ],
            (ItemLoads.Known(build.RaisedM) ?? 0) + dragMoment / dragArea);
    }

    /// <summary>The pot and the crown above it, or the one outline; none when a size is missing.</summary>
    public static IReadOnlyList<WindFace> Faces(ItemBuild build, double footM)
    {
        if (ItemLoads.Known(build.HeightM) is not { } height || ItemLoads.Known(build.WidthM) is not { } width) return [];
        if (ItemLoads.Known(build.PotHeightM) is not { } potHeight || potHeight >= height)
            return [new(width * height * (ItemLoads.Share(build.Solidity) ?? 1), height / 2, ItemLoads.Known(build.Drag) ?? UsualDrag)];

        var crownDepth = Math.Min(ItemLoads.Known(build.CrownDepthM) ?? double.MaxValue, height - potHeight);
        var crownArea = (ItemLoads.Share(build.Solidity) ?? 1) * width * crownDepth;
        return
        [
            new(Math.Min(width, PotOverFoot * footM) * potHeight, potHeight / 2, PotDrag),
            new(crownArea, height - crownDepth / 2, ItemLoads.Known(build.Drag) ?? CrownDrag),
        ];
    }

    /// <summary>With the water in it; soaked in saturated soil, where that is written.</summary>
    private static double? MassKg(ItemBuild build, Soil soil)
    {
        var own = ItemLoads.Known(soil == Soil.Saturated ? build.MassWetKg ?? build.MassKg : build.MassKg);
        return own + (ItemLoads.Known(build.HoldsL) ?? 0) * (ItemLoads.Share(build.Filled) ?? 0);
    }

    /// <summary>Narrowest width of the foot; that of the outline for a thing without a crown.</summary>
    public static double? FootM(ItemBuild build)
    {
        if (ItemLoads.Known(build.BaseM) is { } written) return written;
        if (build.PotHeightM is not null || ItemLoads.Known(build.WidthM) is not { } width) return null;
        return Math.Min(width, ItemLoads.Known(build.DepthM) ?? width);
    }
}
