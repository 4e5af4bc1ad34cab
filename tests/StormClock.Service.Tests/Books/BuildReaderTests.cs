using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>How things are made and stand, and what is taken from the kind where nothing is written.</summary>
public class BuildReaderTests
{
    [Fact]
    public void Read_EveryKeyOfABuild_IsKeptInSi()
    {
        var item = MadeKinds.Item("""
            kind: other
            count: 2
            height: 6 ft 2 in
            width: 3 ft
            depth: 40 cm
            base: 14 in
            mass: 40 lb
            mass_wet: 50 lb
            raised: 18 in
            standing: rooted_through
            stands_on: decking
            drag: 0.8
            friction: 0.45
            solidity: 30 %
            climbers: 0.6
            holds: 55 gal
            filled: 25 %
            pot_height: 300 mm
            stem: 4 in
            crown_depth: 1.2 m
            years: 3.5
            posts: 2
            post: 70 mm
            post_depth: 2 ft
            tie: 110 lbf
            held_to: 45 mph gust
            """, "us");

        var expected = new ItemBuild
        {
            HeightM = 1.8796, WidthM = 0.9144, DepthM = 0.4, BaseM = 0.3556, MassKg = 18.1436948, MassWetKg = 22.6796185, RaisedM = 0.4572,
            Standing = Standing.RootedThrough, Surface = Surface.Decking, Drag = 0.8, Friction = 0.45, Solidity = 0.3, ClimberCover = 0.6,
            HoldsL = 208.19764812, Filled = 0.25, PotHeightM = 0.3, StemM = 0.1016, CrownDepthM = 1.2, YearsInGround = 3.5,
            Posts = 2, PostM = 0.07, PostDeepM = 0.6096, TieN = 489.304377678655, HeldToMps = 20.1168,
        };
        Assert.Equal(expected, item.Written with { TieN = Math.Round(item.Written.TieN!.Value, 12) });
        Assert.Equal(item.Written, item.Build);
    }

    [Fact]
    public void Read_LittleWritten_TakesTheRestFromTheKind()
    {
        var item = MadeKinds.Item("kind: drum\ncount: 3\nheight: 1.1");

        Assert.Equal(new ItemBuild { HeightM = 1.1 }, item.Written);
        Assert.Equal(MadeKinds.Rich["drum"].Typical with { HeightM = 1.1 }, item.Build);
        Assert.Equal(ItemShape.Body, item.Shape);
    }

    /// <summary>A drum of 12 kg dry is not lighter when soaked; a low trellis has no pot higher than itself.</summary>
    [Fact]
    public void Read_TypicalFigureMadeImpossible_IsDroppedWithoutAFault()
    {
        Assert.Null(MadeKinds.Item("kind: drum\ncount: 1\nmass: 12 kg").Build.MassWetKg);
        Assert.Null(MadeKinds.Item("kind: drum\ncount: 1\nmass_wet: 8 kg").Build.MassKg);
        Assert.Null(MadeKinds.Item("kind: trellis\ncount: 1\nheight: 0.3").Build.PotHeightM);
        Assert.Null(MadeKinds.Item("kind: trellis\ncount: 1\npot_height: 2").Build.HeightM);
        Assert.Equal(10, MadeKinds.Item("kind: drum\ncount: 1\nmass: 9.5 kg").Build.MassWetKg);
    }

    [Theory]
    [InlineData("kind: drum\ncount: 3", 90, true)]
    [InlineData("kind: drum\ncount: 3\nvalue: 12", 12, false)]
    [InlineData("kind: drum\ncount: 3\nvalue: 0", 0, false)]
    [InlineData("kind: other\ncount: 3", 50, true)]
    public void Read_Value_IsWrittenOrTypicalOfTheKind(string lines, double value, bool typical)
    {
        var item = MadeKinds.Item(lines);

        Assert.Equal((value, typical), (item.ValueUsd, item.ValueTypical));
    }

    [Fact]
    public void Read_Crop_GivesAHarvest()
    {
        var harvest = MadeKinds.Item("kind: tall_crop\ncount: 12\nvalue: 80\ncrop: tomato\nripe: 30 %\nmature: 0.4\nharvest_value: 55").Harvest;
        var unvalued = MadeKinds.Item("kind: tall_crop\ncount: 12\nvalue: 80\ncrop: citrus\nmature: 0.4").Harvest;

        Assert.Equal(new Harvest(Crops.All["tomato"], 55, 0.3, 0.4), harvest);
        Assert.Equal(new Harvest(Crops.All["citrus"], 80, 0, 0.4) { ValueTypical = true }, unvalued);
        Assert.Null(MadeKinds.Item("kind: tall_crop\ncount: 12").Harvest);
    }

    /// <summary>Ten times 10 % and the like are a whole crop, whatever floating point makes of them.</summary>
    [Theory]
    [InlineData("ripe: 70 %\nmature: 30 %")]
    [InlineData("ripe: 0.7\nmature: 0.30000000000000004")]
    public void Read_WholeCrop_IsNotMoreThanTheWhole(string shares) =>
        Assert.NotNull(MadeKinds.Item($"kind: tall_crop\ncount: 12\ncrop: tomato\n{shares}").Harvest);

    public static TheoryData<string, string, string[]> OneFault => new()
    {
        // lengths and their units
        { "height: 6 foot", "height", ["unknown unit 'foot'", "m, cm, mm, ft, in"] },
        { "height: 0", "height", ["between 0.001 and 60 m"] },
        { "width: 61 m", "width", ["between 0.001 and 60 m", "'61 m'"] },
        { "depth: -1 m", "depth", ["between"] },
        { "base: 21 m", "base", ["between 0.001 and 20 m"] },
        { "raised: -0.1 m", "raised", ["between 0 and 60 m"] },
        { "pot_height: 6 m", "pot_height", ["between 0.001 and 5 m"] },
        { "stem: 6 m", "stem", ["between 0.001 and 5 m"] },
        { "crown_depth: 70 m", "crown_depth", ["between"] },
        { "post: 2 m", "post", ["between 0.001 and 1 m"] },
        { "post_depth: 6 m", "post_depth", ["between 0 and 5 m"] },

        // other figures
        { "mass_wet: 30 tons", "mass_wet", ["unknown unit 'tons'"] },
        { "drag: 9", "drag", ["from 0.05 to 3", "'9'"] },
        { "friction: 0,4", "friction", ["a comma in the number '0,4'"] },
        { "friction: 3", "friction", ["from 0.05 to 2"] },
        { "solidity: 140 %", "solidity", ["between 0 and 100 %", "'140 %'"] },
        { "climbers: 40", "climbers", ["between 0 and 100 %", "e.g. 40 % or 0.4"] },
        { "holds: 200", "holds", ["a volume with its unit", "55 gal"] },
        { "holds: 0 l", "holds", ["between 0.1 and 1000000 l"] },
        { "holds: 60 l\nfilled: -10 %", "filled", ["between 0 and 100 %"] },
        { "years: -1", "years", ["from 0 to 1000"] },
        { "posts: 1.5", "posts", ["whole number from 1 to 100"] },
        { "tie: 50 kg", "tie", ["unknown unit 'kg'", "N, kN, lbf, kgf"] },
        { "held_to: 45", "held_to", ["a wind speed with its unit"] },
        { "held_to: 45 mph sustained", "held_to", ["only the word 'gust' may follow"] },
        { "held_to: 300 mph", "held_to", ["between 1 and 120 m/s"] },

        // words
        { "standing: on_post", "standing", ["did you mean 'on_posts'?"] },
        { "stands_on: pavin", "stands_on", ["did you mean 'paving'?"] },
        { "crop: tomatos\nripe: 0.1", "crop", ["did you mean 'tomato'?"] },
        { "heigth: 1", "heigth", ["unknown key 'heigth'", "did you mean 'height'?"] },

        // what cannot be true together
        { "filled: 40 %", "filled", ["without what it holds", "add holds: 60 l"] },
        { "crop: tomato\nripe: 60 %\nmature: 50 %", "mature", ["more than the whole crop"] },
        { "crop: tomato", "crop", ["add ripe: 30 %"] },
        { "ripe: 0.3", "ripe", ["belongs to a crop", "crop: tomato"] },
        { "harvest_value: 30", "harvest_value", ["belongs to a crop"] },
        { "standing: on_posts\nposts: 2", "posts", ["how deep they stand", "post_depth"] },
        { "height: 0.5\npot_height: 0.6", "height", ["less than 'pot_height'"] },
        { "mass: 10 kg\nmass_wet: 9 kg", "mass_wet", ["less than 'mass'"] },
    };

    [Theory]
    [MemberData(nameof(OneFault))]
    public void Read_OneFault_NamesLineAndMend(string lines, string key, string[] words)
    {
        var text = MadeKinds.Book($"kind: other\ncount: 2\n{lines}");

        var fault = Assert.Single(GardenReader.Read(text, "quay.yaml", null, MadeKinds.Rich).Faults);

        Assert.Equal(SampleBook.LineOf(text, key + ":"), fault.Line);
        Assert.Contains("item 'thing'", fault.Reason);
        Assert.All(words, word => Assert.Contains(word, fault.Reason));
    }

    [Theory]
    [InlineData("kind: drum\ncount: 1\nfilled: 40 %")]
    [InlineData("kind: trellis\ncount: 1\nposts: 3")]
    [InlineData("kind: other\ncount: 1\nposts: 2\nstanding: on_posts\npost_depth: 0.5")]
    [InlineData("kind: other\ncount: 1\nfilled: 40 %\nholds: 5 gal")]
    public void Read_WhatTheKindOrAnotherKeyKnows_IsNoFault(string lines) => Assert.NotNull(MadeKinds.Item(lines));

    [Fact]
    public void Read_LengthWithoutUnit_IsMetresInAMetricBookAndRefusedInAUsOne()
    {
        Assert.Equal(1.8, MadeKinds.Item("kind: other\ncount: 1\nheight: 1.8").Written.HeightM);
        Assert.Equal(1.8, MadeKinds.Item("kind: other\ncount: 1\nheight: 1.8", "metric-knots").Written.HeightM);

        var fault = Assert.Single(GardenReader.Read(MadeKinds.Book("kind: other\ncount: 1\nheight: 1.8", "us"), "quay.yaml").Faults);
        Assert.Contains("must be a length with its unit, e.g. 6 ft, 6 ft 2 in or 1.8 m, not '1.8'", fault.Reason);
    }

    [Fact]
    public void Read_UnknownUnitsOfTheBook_AreToldOnceAndNotAgainAtEachLength()
    {
        var fault = Assert.Single(GardenReader.Read(MadeKinds.Book("kind: other\ncount: 1\nheight: 1.8", "imperial"), "quay.yaml").Faults);

        Assert.Contains("'imperial'", fault.Reason);
    }
}
