using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

/// <summary>What goes before what. Common practice, no source; the things are invented.</summary>
public class OrderOfWorryTests
{
    private static readonly ItemBuild MeshOnSteelPosts = new()
    {
        HeightM = 1.6, WidthM = 2.2, Solidity = 0.09, MassKg = 5, Standing = Standing.OnPosts, Posts = 2, PostM = 0.04, PostDeepM = 0.5,
    };

    private static readonly ItemBuild BoardOnItsFeet = new() { HeightM = 1.6, WidthM = 2.2, Solidity = 1, MassKg = 18, BaseM = 0.6, Standing = Standing.Free };

    [Theory] // common practice, no source
    [InlineData(Soil.Dry)]
    [InlineData(Soil.Saturated)]
    public void OpenMeshOnPosts_SameSize_OutlastsASolidBoardAndAClothedMesh(Soil soil)
    {
        var mesh = First(ItemShape.Panel, MeshOnSteelPosts, soil);
        Assert.True(mesh > 2 * First(ItemShape.Panel, BoardOnItsFeet, soil));
        Assert.True(mesh > 2 * First(ItemShape.Panel, MeshOnSteelPosts with { Solidity = 1, MassKg = 18 }, soil));
        Assert.True(mesh > 2 * First(ItemShape.Panel, MeshOnSteelPosts with { ClimberCover = 0.8 }, soil));
    }

    [Theory] // common practice, no source
    [InlineData(Soil.Dry)]
    [InlineData(Soil.Saturated)]
    public void EmptyTub_SameTub_GoesLongBeforeAFullOne(Soil soil)
    {
        var tub = new ItemBuild { HeightM = 0.55, WidthM = 0.7, DepthM = 0.7, BaseM = 0.6, MassKg = 4, HoldsL = 120, Surface = Surface.Paving, Drag = 0.7 };
        var empty = First(ItemShape.Body, tub with { Filled = 0 }, soil);
        Assert.True(First(ItemShape.Body, tub with { Filled = 1 }, soil) > 3 * empty);
        Assert.True(First(ItemShape.Body, tub with { Filled = 0.5 }, soil) > 2 * empty);
    }

    [Theory] // common practice, no source
    [InlineData(Soil.Dry)]
    [InlineData(Soil.Saturated)]
    public void BoardsLaidFlatAndWeighted_HoldWhereStandingOnesGo(Soil soil)
    {
        MaterialNeed[] weights = [new("concrete block", 12, "each")];
        var flat = JobEffect.After(ItemShape.Panel, BoardOnItsFeet, JobKind.LayFlat, weights, 4);
        Assert.Equal(ItemShape.Sheet, flat.Shape);
        Assert.False(flat.MadeWorse);
        Assert.True(First(flat.Shape, flat.Build, soil) > 3 * First(ItemShape.Panel, BoardOnItsFeet, soil));
        var bare = JobEffect.After(ItemShape.Panel, BoardOnItsFeet, JobKind.LayFlat, [], 4);
        Assert.True(First(flat.Shape, flat.Build, soil) > 2 * First(bare.Shape, bare.Build, soil));
    }

    [Theory] // common practice, no source
    [InlineData(Soil.Dry)]
    [InlineData(Soil.Saturated)]
    public void UnstrappedLid_OfATank_GoesBeforeItsTank(Soil soil)
    {
        var tank = new ItemBuild { HeightM = 1.2, WidthM = 0.8, DepthM = 0.8, MassKg = 20, HoldsL = 450, Filled = 0.3, Drag = 0.7, Surface = Surface.Gravel };
        var lid = new ItemBuild { WidthM = 0.82, DepthM = 0.82, HeightM = 0.03, MassKg = 1.6, RaisedM = 1.2 };
        Assert.True(First(ItemShape.Sheet, lid, soil) < First(ItemShape.Body, tank, soil));
        var strapped = JobEffect.After(ItemShape.Sheet, lid, JobKind.Strap, [new("ratchet strap", 1, "each")], 1);
        Assert.True(First(strapped.Shape, strapped.Build, soil) > 2 * First(ItemShape.Sheet, lid, soil));
    }

    [Fact] // common practice, no source
    public void WetGround_LightThings_LetGoSooner()
    {
        var stool = new ItemBuild { HeightM = 0.45, WidthM = 0.4, DepthM = 0.4, MassKg = 5, Surface = Surface.Tiles };
        Assert.True(First(ItemShape.Body, stool, Soil.Saturated) < First(ItemShape.Body, stool, Soil.Dry));
    }

    private static double First(ItemShape shape, ItemBuild build, Soil soil) => ItemLoads.Of(shape, build, soil)!.First.GustMps;
}
