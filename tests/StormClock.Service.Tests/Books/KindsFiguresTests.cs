using System.Globalization;
using StormClock.Core.Garden;
using StormClock.Core.Loads;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>Figures of the catalogue against the ranges of the trade reference.</summary>
public class KindsFiguresTests
{
    private const double Gravity = 9.80665;

    /// <summary>Pressure per speed squared, Pa/(m/s)^2 (science.md 5.1).</summary>
    private const double Pressure = 0.613;

    [Theory]
    [InlineData("drum", 9, 10)] // 55 gal, plastic, empty (trade.md 2.3, M)
    [InlineData("rain_barrel", 8, 12)] // 190-220 L, empty (2.3, C)
    [InlineData("caged_tank", 55, 65)] // 1 000 L, empty (2.3, M)
    [InlineData("rain_tank", 45, 60)] // round, 2 000 L, empty (2.3, M)
    [InlineData("umbrella", 20, 45)] // with its base (2.3, C)
    [InlineData("hive", 35, 60)] // two boxes, late summer (2.3, C)
    [InlineData("kayak", 20, 28)] // single, plastic (2.3, C)
    [InlineData("gas_bottle", 16.7, 16.9)] // 37 lb full (2.3, M)
    [InlineData("pallet", 14, 22)] // 48 x 40 in (2.3, M)
    [InlineData("potted_tree", 24.0, 24.2)] // 57 L, dry mix (2.4, D)
    [InlineData("bench", 33, 33)] // hardwood (2.4, D)
    [InlineData("hammock_stand", 26, 26)] // steel (2.4, D)
    [InlineData("trough", 29, 29)] // on trestles (2.4, D)
    public void Mass_OfOnePiece_LiesInTheRange(string token, double least, double most) => Assert.InRange(ItemKinds.All[token].Typical.MassKg!.Value, least, most);

    [Theory]
    [InlineData("sheet", 4, 5)] // corrugated steel 0.42-0.48 mm (trade.md 2.3, M)
    [InlineData("ply_sheet", 6, 7.5)] // 12 mm (2.3, M)
    [InlineData("plastic_sheet", 1.25, 1.35)] // twin-wall 6 mm (2.3, M)
    [InlineData("pane", 7.4, 7.6)] // glass 3 mm (2.3, D)
    [InlineData("glass_light", 10, 12)] // glass 4 mm 10 kg/m2, and its frame (2.3, D)
    public void Mass_OfASheet_LiesInTheRangeForItsArea(string token, double least, double most)
    {
        var build = ItemKinds.All[token].Typical;
        Assert.InRange(build.MassKg!.Value / (build.WidthM!.Value * build.DepthM!.Value), least, most);
    }

    /// <summary>Work that comes with a kind can be done by two people of whom nothing is said; common practice, no source.</summary>
    [Fact]
    public void UsualJob_ThatLifts_IsNotTooHeavyForTwo()
    {
        var two = 2 * JobDefaults.LiftKg * Lifting.TwoPeopleShare;
        Assert.All(ItemKinds.All, kind => Assert.All(kind.Value.Jobs.Where(job => job.Kind is JobKind.Move or JobKind.Raise or JobKind.TakeDown),
            job => Assert.InRange(job.PartKg ?? kind.Value.Typical.MassKg ?? 0, 0, two)));
    }

    [Fact]
    public void Mesh_OfTheTable_HasItsMassAndSolidity()
    {
        var mesh = ItemKinds.All["mesh"].Typical;
        Assert.Equal(1.5, mesh.MassKg!.Value / (mesh.HeightM!.Value * mesh.WidthM!.Value), 0.05); // trade.md 2.3, D
        Assert.Equal(0.0975, mesh.Solidity!.Value, 0.0002); // trade.md 11 row 13
    }

    /// <summary>The first failure of trade.md 2.4 (D) comes out of the typical build, by the formulas of science.md 5.1 on the whole outline.</summary>
    [Theory]
    [InlineData("drum", 0, 11.6)]
    [InlineData("caged_tank", 0, 16.0)]
    [InlineData("caged_tank", 0.6, 52.9)] // trade.md 11 row 10
    [InlineData("rain_barrel", 0.2, 26.4)]
    [InlineData("umbrella", 0, 7.0)]
    [InlineData("bench", 0, 15.3)]
    [InlineData("hammock_stand", 0, 12.7)]
    [InlineData("kayak", 0, 11.7)]
    [InlineData("trough", 0, 16.9)]
    [InlineData("hive", 0, 23.8)]
    public void FirstFailure_OfALooseThing_IsThatOfTheTable(string token, double filled, double expectedMps)
    {
        var build = ItemKinds.All[token].Typical;
        var height = build.HeightM!.Value;
        var weight = (build.MassKg!.Value + filled * (build.HoldsL ?? 0)) * Gravity;
        var push = Pressure * build.Drag!.Value * height * build.WidthM!.Value;
        var slides = Math.Sqrt(build.Friction!.Value * weight / push);
        var tips = Math.Sqrt(weight * build.BaseM!.Value / 2 / (push * height / 2));

        Assert.InRange(Math.Min(slides, tips), expectedMps * 0.97, expectedMps * 1.03);
    }

    /// <summary>Crown and pot apart, as in trade.md 11 row 11: dry mix, and the drained bark mix of 2.4 (D).</summary>
    [Fact]
    public void PottedTree_DryAndSoaked_TipsAsInTheTable()
    {
        var build = ItemKinds.All["potted_tree"].Typical;
        var crown = build.Drag!.Value * build.WidthM!.Value * build.CrownDepthM!.Value * (build.HeightM!.Value - build.CrownDepthM.Value / 2);
        var pot = 0.8 * build.BaseM!.Value * build.PotHeightM!.Value * build.PotHeightM.Value / 2;
        double Tips(double massKg) => Math.Sqrt(massKg * Gravity * build.BaseM.Value / 2 / (Pressure * (crown + pot)));

        Assert.Equal(10.7, Tips(build.MassKg!.Value), 0.1);
        Assert.Equal(14.5, Tips(build.MassWetKg!.Value), 0.2);
    }

    /// <summary>Edge raised, coefficient 1 (trade.md 2.4, D).</summary>
    [Theory]
    [InlineData("sheet", 8.3)]
    [InlineData("ply_sheet", 10.6)]
    [InlineData("plastic_sheet", 4.6)]
    public void Lift_OfALooseSheet_IsThatOfTheTable(string token, double expectedMps)
    {
        var build = ItemKinds.All[token].Typical;
        Assert.Equal(expectedMps, Math.Sqrt(build.MassKg!.Value * Gravity / (Pressure * build.WidthM!.Value * build.DepthM!.Value)), 0.1);
    }

    /// <summary>Drags of science.md 5.2 (M), with their ranges.</summary>
    [Theory]
    [InlineData("drum", 0.5, 0.9)] // short upright cylinder; trade.md 2.2 says use 0.8
    [InlineData("rain_tank", 0.5, 0.8)]
    [InlineData("caged_tank", 1.3, 1.4)] // square
    [InlineData("hive", 1.05, 1.3)] // box
    [InlineData("table", 0.6, 0.6)]
    [InlineData("chair", 1.0, 1.0)]
    [InlineData("fence", 1.2, 1.55)] // flat solid panel standing
    [InlineData("palm", 0.3, 0.3)] // 5.3
    [InlineData("shade_tree", 0.5, 0.5)] // broadleaf in leaf, 5.3
    public void Drag_OfAThing_IsThatOfItsShape(string token, double least, double most) => Assert.InRange(ItemKinds.All[token].Typical.Drag!.Value, least, most);

    /// <summary>Minutes of trade.md 4.2 (C); the people's column as the job says.</summary>
    [Theory]
    [InlineData("potted_plant", JobKind.Move, 1, 10, 20)] // pot 5-15 kg: 2
    [InlineData("potted_tree", JobKind.LayFlat, 2, 4, 20)] // pot 25-50 kg by two: 5
    [InlineData("hanging", JobKind.TakeDown, 2, 10, 13)] // by two 1.3
    [InlineData("cloche", JobKind.Move, 1, 8, 12)] // pack glass: 1.5
    [InlineData("pane", JobKind.Move, 1, 24, 36)] // pack glass: 1.5
    [InlineData("climber", JobKind.Prune, 1, 3, 30)] // 10 for 3 m2
    [InlineData("mesh", JobKind.LayFlat, 2, 1, 10)] // unfix a mesh by two 7-12
    [InlineData("sign", JobKind.TakeDown, 2, 1, 10)] // or a sign board
    [InlineData("fruit_cage", JobKind.CoverOff, 2, 1, 30)] // net off by two 30
    [InlineData("hoop_house", JobKind.CoverOff, 2, 1, 34)] // film off by two 34
    [InlineData("glass_light", JobKind.TakeDown, 1, 2, 14)] // a light: 7
    [InlineData("hive", JobKind.Strap, 1, 2, 30)] // 15
    [InlineData("tall_crop", JobKind.Bundle, 1, 1, 3)] // a bundle of 3-5 stems: 3
    [InlineData("tall_crop", JobKind.Bundle, 1, 16, 15)] // four bundles, 3 each, and the first stem in full
    [InlineData("banana", JobKind.Pick, 2, 1, 11)] // heavy bunch on a rope by two
    [InlineData("banana", JobKind.Prune, 1, 3, 15)] // leaf off a stem: 5
    [InlineData("fruit_tree", JobKind.Pick, 1, 1, 24)] // 10 for 25 fruit from the ground, 60 fruit
    [InlineData("sheet", JobKind.Strap, 2, 4, 8)] // 4 sheets by two: 8
    [InlineData("caged_tank", JobKind.Strap, 1, 1, 20)] // tank lid and tank: 20
    [InlineData("caged_tank", JobKind.Fill, 1, 1, 10)] // 1 000 L: attention 10
    [InlineData("drum", JobKind.Fill, 1, 3, 15)] // 200 L: attention 5
    [InlineData("chemicals", JobKind.Raise, 1, 3, 30)] // tub: 10
    public void Minutes_OfALine_AreThoseOfTheTable(string token, JobKind kind, int people, int count, int expected)
    {
        var job = ItemKinds.All[token].Jobs.Single(job => job.Kind == kind);
        Assert.Equal(people, job.People);
        Assert.Equal(expected, job.Minutes(count));
    }

    /// <summary>What waits for the last hours and what never does (trade.md 4.3, C).</summary>
    [Theory]
    [InlineData("brittle_hanging", JobKind.TakeDown, WorkClass.Ladder, true)]
    [InlineData("hanging", JobKind.TakeDown, WorkClass.Ladder, false)]
    [InlineData("bin", JobKind.Strap, WorkClass.Ground, true)] // lid
    [InlineData("rain_barrel", JobKind.Strap, WorkClass.Ground, true)] // lid
    [InlineData("rain_tank", JobKind.Strap, WorkClass.Ground, false)]
    [InlineData("loose_gear", JobKind.Move, WorkClass.Ground, true)]
    [InlineData("pane", JobKind.Move, WorkClass.Sheet, true)]
    [InlineData("hive", JobKind.Strap, WorkClass.Ground, true)]
    [InlineData("climber", JobKind.Prune, WorkClass.Ground, false)] // thin whippy growth goes early
    [InlineData("sheet", JobKind.Strap, WorkClass.Sheet, false)]
    [InlineData("shade_sail", JobKind.TakeDown, WorkClass.Sheet, false)]
    [InlineData("hoop_house", JobKind.CoverOff, WorkClass.Sheet, false)]
    [InlineData("sign", JobKind.TakeDown, WorkClass.Sheet, false)]
    [InlineData("gas_bottle", JobKind.Strap, WorkClass.Ground, false)]
    public void Job_OfAKind_HasItsClassAndPlaceInTheOrder(string token, JobKind kind, WorkClass workClass, bool lastRound)
    {
        var item = ItemKinds.All[token];
        var job = item.Jobs.Single(job => job.Kind == kind);
        Assert.Equal(workClass, job.Class ?? JobDefaults.ClassOf(kind, item.Traits));
        Assert.Equal(lastRound, JobDefaults.LastRoundOf(kind, item.Traits));
    }

    /// <summary>Trade.md 5 (C): for one piece.</summary>
    [Theory]
    [InlineData("caged_tank", JobKind.Strap, "ratchet strap 2 each, ground anchor 2 each")]
    [InlineData("hive", JobKind.Strap, "ratchet strap 1 each, ground anchor 2 each")]
    [InlineData("mesh", JobKind.LayFlat, "ground staple 4 each")]
    [InlineData("sheet", JobKind.Strap, "ratchet strap 0.25 each")] // 2 for a stack of 8
    [InlineData("tall_crop", JobKind.Bundle, "stake 0.25 each, garden twine 0.4 m")] // 1 stake and 1.5 m for 3-5 stems
    public void Materials_OfAJob_AreThoseOfTheTable(string token, JobKind kind, string expected) =>
        Assert.Equal(expected, string.Join(", ", ItemKinds.All[token].Jobs.Single(job => job.Kind == kind).Materials.Select(need => string.Create(CultureInfo.InvariantCulture, $"{need.Material} {need.Quantity} {need.Unit}"))));

    /// <summary>Trade.md 3.1; where it has a range of days, the range.</summary>
    [Theory]
    [InlineData("avocado", true, 3, 8)] // R
    [InlineData("banana", true, 7, 14)] // C
    [InlineData("citrus", false, 1, 60)] // ripens off: M
    [InlineData("cut_flowers", true, 3, 10)] // C
    [InlineData("dragon_fruit", false, 1, 60)] // M
    [InlineData("maize", false, 1, 1)] // the same day, M
    [InlineData("peach", true, 2, 5)] // M
    [InlineData("pepper", true, 7, 14)] // M
    [InlineData("mango", true, 4, 10)] // C
    [InlineData("papaya", true, 4, 10)] // C
    [InlineData("plantain", true, 4, 10)] // C
    [InlineData("tomato", true, 7, 21)] // M
    public void Crop_PickedEarly_RipensAndKeepsAsTheTableSays(string token, bool ripensOff, double leastDays, double mostDays)
    {
        Assert.Equal(ripensOff, Crops.All[token].RipensOff);
        Assert.InRange(Crops.All[token].KeepsDays, leastDays, mostDays);
    }
}
