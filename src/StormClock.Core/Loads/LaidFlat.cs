using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>Things that are laid down: a body on its side, a panel as a sheet. Old ties are undone.</summary>
internal static class LaidFlat
{
    // Steel roofing 4 to 5, plywood 6 to 7.5, mesh 15 kg/m² of its solid area (trade.md 2.3); where a book gives no mass (C).
    private const double SolidKgM2 = 4;

    private const double SheetThickM = 0.02;

    // Of its thickness: what a round thing rests on (C).
    private const double RollingFoot = 0.2;

    // Of what holds water, the round are 0.5 to 0.8 and the square 1.3 (science.md 5.2).
    private const double RoundUpToDrag = 0.8;

    public static (ItemShape Shape, ItemBuild Build) Of(ItemShape shape, ItemBuild build, double weightKg, double holdN) => shape switch
    {
        ItemShape.Body => (shape, Steadied.Weighed(shape, Body(build, chocked: weightKg > 0 || holdN > 0), weightKg, holdN)),
        ItemShape.Panel => (ItemShape.Sheet, Flush(Panel(build), weightKg, holdN)),
        ItemShape.Sheet => (shape, Flush(build with { Standing = Standing.Lying }, weightKg, holdN)),
        _ => (shape, build),
    };

    /// <summary>Pinned or weighted all over, its edges closed.</summary>
    private static ItemBuild Flush(ItemBuild build, double weightKg, double holdN)
    {
        var held = Steadied.Weighed(ItemShape.Sheet, build, weightKg, holdN);
        return holdN > 0 ? held with { Drag = Math.Min(held.Drag ?? SheetLoads.FlushLift, SheetLoads.FlushLift) } : held;
    }

    private static ItemBuild Panel(ItemBuild build)
    {
        var solidity = ItemLoads.Share(build.Solidity) ?? 1;
        return build with
        {
            HeightM = SheetThickM,
            DepthM = build.HeightM,
            RaisedM = null,
            MassKg = ItemLoads.Known(build.MassKg) ?? build.HeightM * build.WidthM * solidity * SolidKgM2,
            BaseM = null,
            Drag = null,
            Standing = Standing.Lying,
            TieN = null,
            Posts = null,
            PostM = null,
            PostDeepM = null,
        };
    }

    /// <summary>Lower, with its water gone. What is round rolls unless it is chocked.</summary>
    private static ItemBuild Body(ItemBuild build, bool chocked)
    {
        var lying = build with { RaisedM = null, Standing = Standing.Lying, TieN = null, Filled = build.Filled is null ? null : 0 };
        if (BodyLoads.FootM(build) is not { } footM) return lying;
        var faces = BodyLoads.Faces(build, footM);
        return faces.Count switch
        {
            0 => lying,
            1 => Box(lying, footM, chocked),
            _ => Potted(lying, footM, faces),
        };
    }

    /// <summary>On its longest sides, the shortest upright.</summary>
    private static ItemBuild Box(ItemBuild lying, double footM, bool chocked)
    {
        var (height, width) = (lying.HeightM!.Value, lying.WidthM!.Value);
        var thick = Math.Min(Math.Min(height, width), ItemLoads.Known(lying.DepthM) ?? width);
        var rolls = !chocked && lying.HoldsL is not null && lying.Drag <= RoundUpToDrag;
        return lying with
        {
            HeightM = thick,
            WidthM = Math.Max(height, width),
            DepthM = Math.Min(height, width),
            BaseM = rolls ? RollingFoot * thick : Math.Max(footM, thick),
            PotHeightM = null,
        };
    }

    /// <summary>The same outline, pot and crown, along the ground.</summary>
    private static ItemBuild Potted(ItemBuild lying, double footM, IReadOnlyList<WindFace> faces)
    {
        var area = faces.Sum(face => face.AreaM2);
        return lying with
        {
            HeightM = area / lying.HeightM!.Value,
            WidthM = lying.HeightM,
            DepthM = lying.WidthM,
            BaseM = footM,
            Drag = faces.Sum(face => face.DragAreaM2) / area,
            Solidity = null,
            PotHeightM = null,
            CrownDepthM = null,
        };
    }
}
