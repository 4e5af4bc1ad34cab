using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Flat things that stand upright: lean on their posts, break from what they are fastened to, or slide and tip.</summary>
internal static class PanelLoads
{
    private const int UsualPosts = 2;

    public static (List<Failure> Modes, double CentreM) Of(ItemBuild build, Soil soil)
    {
        if (DragAreaM2(build) is not { } dragArea) return ([], 0);
        var centreM = ItemLoads.MiddleM(build);
        var modes = build.Standing switch
        {
            Standing.OnPosts => OnPosts(build, soil, dragArea, centreM),
            Standing.Fastened => Fastened(build, dragArea),
            _ => OnItsFoot(build, soil, dragArea),
        };
        return (modes, centreM);
    }

    /// <summary>Force over velocity pressure; null when a size is missing or nothing of the outline stops the wind.</summary>
    private static double? DragAreaM2(ItemBuild build)
    {
        var drag = Drag(build, ItemLoads.Known(build.Drag) ?? PorousPanel.SolidDrag);
        return ItemLoads.Known(ItemLoads.Known(build.HeightM) * ItemLoads.Known(build.WidthM) * drag);
    }

    /// <summary>On the gross outline, with its holes and what grows in them.</summary>
    public static double Drag(ItemBuild build, double solidDrag)
    {
        var solidity = PorousPanel.Overgrown(ItemLoads.Share(build.Solidity) ?? 1, ItemLoads.Share(build.ClimberCover) ?? 0);
        return PorousPanel.Drag(solidity, solidDrag);
    }

    private static List<Failure> OnPosts(ItemBuild build, Soil soil, double dragArea, double centreM)
    {
        if (ItemLoads.Known(build.PostM) is not { } width) return [];
        var posts = build.Posts is > 0 and var written ? written : UsualPosts;
        var guys = new Tie(Holding.Of(build, soil), 0).AlongN;
        List<Failure> modes =
            [new(FailureMode.Breaks, Posts.BreaksAtMps(dragArea, centreM, posts, width, Posts.WoodStrengthPa, guys), Fragility.BetaGrown)];
        if (ItemLoads.Known(build.PostDeepM) is { } deep)
            modes.Add(new(FailureMode.Leans, Posts.LeansAtMps(dragArea, centreM, posts, width, deep, Posts.SoilWeightNm3(soil), guys), Fragility.BetaGrown));
        return modes;
    }

    /// <summary>Fixings are pulled straight; nothing is said when their hold is not written.</summary>
    private static List<Failure> Fastened(ItemBuild build, double dragArea) => ItemLoads.Known(build.TieN) is { } hold
        ? [new(FailureMode.Breaks, VelocityPressure.GustMps(hold / dragArea), Fragility.BetaTied)]
        : [];

    private static List<Failure> OnItsFoot(ItemBuild build, Soil soil, double dragArea)
    {
        var mass = ItemLoads.Known(soil == Soil.Saturated ? build.MassWetKg ?? build.MassKg : build.MassKg);
        if (mass is not { } massKg || ItemLoads.Known(build.BaseM ?? build.DepthM) is not { } footM) return [];
        var held = Holding.Of(build, soil);
        var tie = new Tie(held, footM);
        var beta = held > 0 ? Fragility.BetaTied : Fragility.BetaRigid;
        var friction = Friction.Of(ItemLoads.Known(build.Friction), build.Surface, soil);
        return
        [
            new(FailureMode.Slides, Footing.SlidesAtMps(massKg, friction, dragArea, tie), beta),
            new(FailureMode.Tips, Footing.TipsAtMps(massKg, footM / 2, dragArea * build.HeightM!.Value / 2, tie), beta),
        ];
    }
}
