using CsCheck;
using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class ItemLoadsTests
{
    [Fact]
    public void Body_PotAndCrown_TipsAsInTheWorkedExample()
    {
        // trade.md 11, 11 and 12: crown 0.9 m² at 1.3 m, pot 0.16 m² at 0.19 m, base 0.36.
        var tree = new ItemBuild { HeightM = 1.8, WidthM = 0.9, CrownDepthM = 1.0, PotHeightM = 0.38, BaseM = 0.36, MassKg = 24.1, MassWetKg = 62.9, Friction = 0.5 };
        var (dry, soaked) = (Of(ItemShape.Body, tree), Of(ItemShape.Body, tree, Soil.Saturated));
        Assert.Equal(FailureMode.Tips, dry.First.Mode);
        Assert.Equal(10.7, dry.First.GustMps, 0.1);
        Assert.Equal(17.2, soaked.First.GustMps, 0.1);
        Assert.Equal(Fragility.BetaRigid, dry.First.Beta);
        Assert.Equal((0.45 * 1.3 + 0.128 * 0.19) / 0.578, dry.CentreHeightM, 0.02);
    }

    // science.md 9, L5 (D).
    [Theory]
    [InlineData(0, 13.8, 20.1)]
    [InlineData(0.25, 41.4, 60.1)]
    [InlineData(1, 79.2, 115.1)]
    public void Body_TankByItsFill_SlidesBeforeItTips(double filled, double slides, double tips)
    {
        var tank = Of(ItemShape.Body, new() { HeightM = 1.3, WidthM = 1.1, DepthM = 1.1, MassKg = 30, HoldsL = 950, Filled = filled, Drag = 0.7, Friction = 0.4 });
        Assert.Equal([FailureMode.Slides, FailureMode.Tips], tank.Modes.Select(mode => mode.Mode));
        Assert.Equal(slides, tank.Modes[0].GustMps, 0.1);
        Assert.Equal(tips, tank.Modes[1].GustMps, 0.1);
    }

    [Fact]
    public void Body_RaisedOnBlocks_IsMetHigherUpAndTipsAboutItsOwnFoot()
    {
        var barrel = new ItemBuild { HeightM = 0.9, WidthM = 0.6, MassKg = 40 };
        var (low, high) = (Of(ItemShape.Body, barrel), Of(ItemShape.Body, barrel with { RaisedM = 0.4 }));
        Assert.Equal(0.45, low.CentreHeightM, 1e-9);
        Assert.Equal(0.85, high.CentreHeightM, 1e-9);
        Assert.Equal(low.Modes, high.Modes);
    }

    [Fact]
    public void Body_Slatted_CatchesItsSolidShareOnly()
    {
        var seat = new ItemBuild { HeightM = 0.9, WidthM = 0.6, MassKg = 12 };
        Assert.Equal(2 * Of(ItemShape.Body, seat).First.GustMps, Of(ItemShape.Body, seat with { Solidity = 0.25 }).First.GustMps, 1e-9);
    }

    [Fact]
    public void Panel_OnPosts_LeansAsL10AndSoonerWhenSoaked()
    {
        // science.md 9, L10, but the coefficient of 5.2 on the gross area: 1.3 (1 − 0.4^1.5) = 0.971 where L10 has 1.2 · 0.6.
        // 19.63 · √(0.72 / 0.971) = 16.90; 13.46 likewise.
        var trellis = new ItemBuild { HeightM = 1.8, WidthM = 2.4, Solidity = 0.6, Standing = Standing.OnPosts, Posts = 2, PostM = 0.1, PostDeepM = 0.6 };
        var dry = Of(ItemShape.Panel, trellis);
        Assert.Equal(FailureMode.Leans, dry.First.Mode);
        Assert.Equal(FailureMode.Breaks, dry.Modes[1].Mode);
        Assert.Equal(16.90, dry.First.GustMps, 0.02);
        Assert.Equal(11.59, Of(ItemShape.Panel, trellis, Soil.Saturated).First.GustMps, 0.02);
        Assert.Equal(Fragility.BetaGrown, dry.First.Beta);
    }

    [Fact]
    public void Panel_OnItsFoot_TipsAsL4()
    {
        var board = Of(ItemShape.Panel, new() { HeightM = 1.8, WidthM = 1.2, MassKg = 25, BaseM = 0.5, Friction = 0.4 });
        Assert.Equal(FailureMode.Tips, board.First.Mode);
        Assert.Equal(6.29, board.First.GustMps, 0.02);
        Assert.Equal(7.55, board.Modes[1].GustMps, 0.02);
    }

    [Fact]
    public void Panel_Fastened_BreaksAtTheHoldThatIsWrittenOrSaysNothing()
    {
        // By hand: 1000 N / (1.3 · 1 m²) = 769 Pa → 35.4 m/s.
        var board = new ItemBuild { HeightM = 1, WidthM = 1, MassKg = 10, BaseM = 0.3, Standing = Standing.Fastened };
        Assert.Null(ItemLoads.Of(ItemShape.Panel, board, Soil.Dry));
        Assert.Equal(35.4, Of(ItemShape.Panel, board with { TieN = 1000 }, Soil.Saturated).First.GustMps, 0.05);
    }

    // trade.md 2.4 and 11, 7 (D); science.md L4 flat.
    [Theory]
    [InlineData(5.9, 0.75, 1.8, 8.4)]
    [InlineData(20, 1.2, 2.4, 10.6)]
    [InlineData(25, 1.2, 1.8, 13.6)]
    public void Sheet_Loose_Lifts(double massKg, double width, double length, double expected)
    {
        var lying = Of(ItemShape.Sheet, new() { HeightM = 0.02, WidthM = width, DepthM = length, MassKg = massKg });
        Assert.Equal(FailureMode.Lifts, lying.First.Mode);
        Assert.Equal(expected, lying.First.GustMps, 0.1);
        Assert.Equal(lying.First, Of(ItemShape.Sheet, new() { HeightM = length, WidthM = width, MassKg = massKg }).First);
    }

    [Fact]
    public void Hung_Basket_SwingsAt30Degrees()
    {
        // L7: 5 kg, Cd A 0.056; tan 30° · 49.03 N / (0.613 · 0.056) → 28.7 m/s.
        var basket = Of(ItemShape.Hung, new() { HeightM = 0.2, WidthM = 0.35, Drag = 0.8, MassKg = 5, RaisedM = 2 });
        Assert.Equal(new(FailureMode.Swings, basket.First.GustMps, Fragility.BetaTied), basket.First);
        Assert.Equal(28.7, basket.First.GustMps, 0.05);
        Assert.Equal(2.1, basket.CentreHeightM, 1e-9);
    }

    [Fact]
    public void Tree_L6WithBentCrownAndKnots_UprootsFirst()
    {
        // L6 by hand with the lever 1.1 · 5.5: uproots 28.2 · 1.1^(−1/1.3) = 26.2; stem 51.8 · (0.9 / 1.1)^(1/1.3) = 44.4, held at the 42 of trade.md 2.6.
        var tree = new ItemBuild { HeightM = 8, WidthM = 4, CrownDepthM = 5, StemM = 0.18, YearsInGround = 12, Standing = Standing.Rooted };
        var strength = Of(ItemShape.Tree, tree);
        Assert.Equal([FailureMode.Uproots, FailureMode.Breaks], strength.Modes.Select(mode => mode.Mode));
        Assert.Equal(26.2, strength.First.GustMps, 0.1);
        Assert.Equal(42, strength.Modes[1].GustMps, 1e-9);
        Assert.Equal(5.5, strength.CentreHeightM, 1e-9);

        Assert.True(First(tree with { YearsInGround = 1 }) < First(tree));
        Assert.True(First(tree with { YearsInGround = 1 }) < First(tree with { YearsInGround = 1, Standing = Standing.Staked }));
        Assert.True(First(tree, Soil.Saturated) < First(tree));
        static double First(ItemBuild build, Soil soil = Soil.Dry) => Of(ItemShape.Tree, build, soil).First.GustMps;
    }

    // C, after trade.md 2.6.
    [Theory]
    [InlineData(ItemShape.Stems, Soil.Dry, FailureMode.Lodges, 14)]
    [InlineData(ItemShape.Stems, Soil.Saturated, FailureMode.Lodges, 11.9)]
    [InlineData(ItemShape.Cover, Soil.Saturated, FailureMode.Tears, 14)]
    [InlineData(ItemShape.Fixed, Soil.Saturated, FailureMode.Breaks, 14)]
    [InlineData(ItemShape.Body, Soil.Dry, FailureMode.Tips, 14)]
    public void Of_GustThatWasSeen_IsTaken(ItemShape shape, Soil soil, FailureMode mode, double expected)
    {
        var first = Of(shape, new() { HeldToMps = 14 }, soil).First;
        Assert.Equal(mode, first.Mode);
        Assert.Equal(expected, first.GustMps, 1e-9);
    }

    [Fact]
    public void Of_GustThatWasSeen_TakesThePlaceOfTheFormulaAndFallsWithRainAsItDoes()
    {
        var tree = new ItemBuild { HeightM = 8, WidthM = 4, CrownDepthM = 5, StemM = 0.18 };
        var seen = tree with { HeldToMps = 40 };
        Assert.Equal(40, Of(ItemShape.Tree, seen).First.GustMps, 1e-9);
        var share = Of(ItemShape.Tree, tree, Soil.Saturated).First.GustMps / Of(ItemShape.Tree, tree).First.GustMps;
        Assert.Equal(40 * share, Of(ItemShape.Tree, seen, Soil.Saturated).First.GustMps, 1e-9);
    }

    [Fact]
    public void Of_NothingKnown_SaysNothing() =>
        Assert.All(Enum.GetValues<ItemShape>(), shape => Assert.Null(ItemLoads.Of(shape, ItemBuild.Unknown, Soil.Saturated)));

    [Fact]
    public void Body_MassOrSizeMissing_SaysNothing()
    {
        var whole = new ItemBuild { HeightM = 1, WidthM = 0.5, MassKg = 20 };
        Assert.NotNull(ItemLoads.Of(ItemShape.Body, whole, Soil.Dry));
        Assert.Null(ItemLoads.Of(ItemShape.Body, whole with { MassKg = 0 }, Soil.Dry));
        Assert.Null(ItemLoads.Of(ItemShape.Body, whole with { HeightM = null }, Soil.Dry));
        Assert.Null(ItemLoads.Of(ItemShape.Body, whole with { WidthM = null }, Soil.Dry));
        Assert.Null(ItemLoads.Of(ItemShape.Body, whole with { PotHeightM = 0.3 }, Soil.Dry));
    }

    [Fact]
    public void Of_AnyBuild_IsNothingOrAscendingGustsAboveZero() =>
        Gen.Select(AnyThing.Shape, Gen.OneOf(AnyThing.Build, AnyThing.Nonsense), Gen.Enum<Soil>()).Sample((shape, build, soil) =>
        {
            if (ItemLoads.Of(shape, build, soil) is not { } strength) return;
            Assert.NotEmpty(strength.Modes);
            Assert.All(strength.Modes, mode => Assert.InRange(mode.GustMps, double.Epsilon, double.MaxValue));
            Assert.Equal(strength.Modes.OrderBy(mode => mode.GustMps), strength.Modes);
            Assert.True(double.IsFinite(strength.CentreHeightM));
        });

    [Fact]
    public void Body_HeavierOrWider_StandsMoreAndLargerOrHigherLess() =>
        Gen.Select(Gen.Select(Gen.Double[0.2, 2.5], Gen.Double[0.1, 1.5], Gen.Double[0.2, 1], Gen.Double[1, 300]), Gen.Double[1.01, 3], Gen.Enum<Soil>(), Gen.Enum<Surface>())
            .Sample((thing, more, soil, surface) =>
            {
                var build = new ItemBuild { HeightM = thing.Item1, WidthM = thing.Item2, BaseM = thing.Item3, MassKg = thing.Item4, Surface = surface };
                var first = First(build);
                Assert.True(First(build with { MassKg = build.MassKg * more }) > first);
                Assert.True(First(build with { BaseM = build.BaseM * more }) >= first);
                Assert.True(First(build with { WidthM = build.WidthM * more }) < first);
                Assert.True(First(build with { HeightM = build.HeightM * more }) < first);
                Assert.True(First(build with { TieN = 100 * more }) > first);
                double First(ItemBuild b) => Of(ItemShape.Body, b, soil).First.GustMps;
            });

    [Fact]
    public void PanelOnPosts_DeeperOrFewerLeaves_StandsMore() =>
        Gen.Select(Gen.Select(Gen.Double[0.5, 2.5], Gen.Double[0.5, 4], Gen.Double[0.05, 0.9], Gen.Double[0.3, 0.9]), Gen.Double[0.05, 1], Gen.Enum<Soil>())
            .Sample((thing, cover, soil) =>
            {
                var build = new ItemBuild
                {
                    HeightM = thing.Item1, WidthM = thing.Item2, Solidity = thing.Item3, PostDeepM = thing.Item4, PostM = 0.07, Standing = Standing.OnPosts,
                };
                var leans = Leans(build);
                Assert.True(Leans(build with { ClimberCover = cover }) < leans);
                Assert.True(Leans(build with { PostDeepM = build.PostDeepM * 1.2 }) > leans);
                Assert.True(Leans(build with { RaisedM = 0.5 }) < leans);
                Assert.True(Leans(build with { Posts = 3 }) > leans);
                double Leans(ItemBuild b) => Of(ItemShape.Panel, b, soil).Modes.Single(mode => mode.Mode == FailureMode.Leans).GustMps;
            });

    private static ItemStrength Of(ItemShape shape, ItemBuild build, Soil soil = Soil.Dry) =>
        ItemLoads.Of(shape, build, soil) ?? throw new Xunit.Sdk.XunitException("nothing said");
}
