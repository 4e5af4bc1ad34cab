using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Kinds;

namespace StormClock.Service.Tests.Books;

/// <summary>The catalogue that comes with the program holds together.</summary>
public class KindsCatalogueTests
{
    public static TheoryData<string> Tokens => [.. ItemKinds.All.Keys];

    /// <summary>Tokens stand in gardeners' files: one that was once known stays known.</summary>
    private static readonly string[] FirstTokens =
    [
        "bed", "seedlings", "ground_crop", "low_crop", "tall_crop", "climber", "shrub", "hedge", "wigwam", "trellis", "lattice", "mesh", "espalier",
        "young_tree", "fruit_tree", "shade_tree", "banana", "palm", "potted_plant", "potted_tree", "trough", "hanging", "sign", "vane", "lamp",
        "ornament", "furniture", "umbrella", "swing", "loose_gear", "timber", "sheet", "shade_sail", "fruit_cage", "hoop_house", "cold_frame",
        "cloche", "pane", "greenhouse", "shed", "gate", "rain_tank", "rain_barrel", "drum", "pond", "downpipe", "pump", "gas_bottle", "fuel",
        "chemicals", "compost", "bin", "boat", "hive", "run", "animals", "other",
    ];

    [Fact]
    public void OwnText_Read_HasNoFault() => Assert.Empty(CatalogueReader.Read(Catalogue.OwnText()).Faults);

    [Fact]
    public void Kinds_Counted_AreEnoughAndKeepEveryFirstToken()
    {
        Assert.True(ItemKinds.All.Count >= 58, $"{ItemKinds.All.Count} kinds");
        Assert.Empty(FirstTokens.Except(ItemKinds.All.Keys));
    }

    [Fact]
    public void Kinds_Words_AreDistinct() => Assert.Equal(ItemKinds.All.Count, ItemKinds.All.Values.Select(kind => kind.Words).Distinct().Count());

    [Theory]
    [MemberData(nameof(Tokens))]
    public void Kind_OfAnyToken_HasWhatItsShapeNeeds(string token)
    {
        var kind = ItemKinds.All[token];
        var build = kind.Typical;

        Assert.Equal(token, kind.Token);
        Assert.NotEmpty(kind.Words);
        Assert.True(kind.ValueEachUsd > 0);
        bool[] needs = kind.Shape switch
        {
            ItemShape.Body => [build.HeightM > 0, build.WidthM > 0, build.BaseM > 0, build.MassKg > 0, build.Drag > 0, build.Surface is not null],
            ItemShape.Panel => [build.HeightM > 0, build.WidthM > 0, build.Solidity > 0, build is { Posts: > 0, PostM: > 0, PostDeepM: > 0 }],
            ItemShape.Sheet => [build.WidthM > 0, build.DepthM > 0, build.MassKg > 0],
            ItemShape.Hung => [build.HeightM > 0, build.WidthM > 0, build.MassKg > 0, build.Drag > 0],
            ItemShape.Tree => [build.HeightM > build.CrownDepthM, build.WidthM > 0, build.CrownDepthM > 0, build.StemM > 0, build.Drag > 0],
            ItemShape.Stems or ItemShape.Cover => [build.HeldToMps > 0],
            _ => [build.HeldToMps is null or > 0],
        };
        Assert.DoesNotContain(false, needs);
    }

    [Theory]
    [MemberData(nameof(Tokens))]
    public void Kind_OfAnyToken_HasJobsThatCanBePlanned(string token)
    {
        var kind = ItemKinds.All[token];
        foreach (var job in kind.Jobs)
        {
            var above = kind.Jobs.TakeWhile(other => other != job).Select(other => other.Kind).ToList();
            Assert.True(job.Kind < JobKind.Untie, $"{job.Kind} belongs after the storm");
            Assert.InRange(job.People, 1, 2);
            Assert.InRange(job.Minutes(1), 1, 120);
            Assert.True(job.Minutes(12) >= job.Minutes(1));
            Assert.All(job.After, before => Assert.Contains(before, above));
            Assert.True(JobDefaults.UndoOf(job.Kind) is null or >= JobKind.Untie);
        }
    }

    /// <summary>One person foots the ladder; nobody climbs into a tree or saws in one (trade.md 1.1).</summary>
    [Theory]
    [MemberData(nameof(Tokens))]
    public void Kind_OfAnyToken_SendsNobodyUpALadderAloneNorToSaw(string token)
    {
        var kind = ItemKinds.All[token];
        foreach (var job in kind.Jobs)
        {
            var workClass = job.Class ?? JobDefaults.ClassOf(job.Kind, kind.Traits);
            Assert.NotEqual(WorkClass.Saw, workClass);
            Assert.False(workClass is WorkClass.Ladder && (kind.Shape is ItemShape.Tree || job.People < 2), $"{job.Kind} of {token} goes up a ladder");
        }
    }

    /// <summary>A class is written only where the rule would give another.</summary>
    [Theory]
    [MemberData(nameof(Tokens))]
    public void Kind_OfAnyToken_WritesNoClassThatTheRuleGives(string token)
    {
        var kind = ItemKinds.All[token];
        Assert.DoesNotContain(kind.Jobs, job => job.Class == JobDefaults.ClassOf(job.Kind, kind.Traits));
    }

    /// <summary>Above 23 kg dry it takes two to lift (trade.md 4.1, C); what lies on the ground to be strapped, filled or tied is not lifted.</summary>
    [Theory]
    [MemberData(nameof(Tokens))]
    public void Kind_TooHeavyForOne_IsLiftedByTwo(string token)
    {
        var kind = ItemKinds.All[token];
        var lifted = kind.Jobs.Where(job => job.Kind is JobKind.Move or JobKind.Raise or JobKind.LayFlat && kind.Typical.MassKg > 23);
        Assert.All(lifted, job => Assert.Equal(2, job.People));
    }

    [Theory]
    [InlineData("shade_tree")]
    [InlineData("palm")]
    public void Kind_LargeTree_HasNoJobAndNamesTheArborist(string token)
    {
        Assert.Empty(ItemKinds.All[token].Jobs);
        Assert.Contains("licensed arborist", ItemKinds.All[token].Caution);
    }

    [Theory]
    [InlineData("animals")]
    [InlineData("hive")]
    [InlineData("run")]
    public void Kind_Animal_LeavesItToTheOwner(string token) => Assert.Contains("owner decides", ItemKinds.All[token].Caution);

    [Fact]
    public void Materials_OfAllJobs_AreAllTheFileNames()
    {
        var faults = new FaultList();
        var named = new YamlFields(YamlTreeReader.Read(Catalogue.OwnText(), faults)!, "catalogue", null, faults).OpenMap("materials", "materials", "")!.Keys;
        var used = ItemKinds.All.Values.SelectMany(kind => kind.Jobs).SelectMany(job => job.Materials).Select(need => need.Material).Distinct();

        Assert.Equal(named.Order(), used.Order());
    }

    /// <summary>Nothing that people read claims safety.</summary>
    [Fact]
    public void Texts_OfAllKinds_NeverSaySafe()
    {
        var texts = ItemKinds.All.Values.SelectMany(kind => kind.Jobs.SelectMany(job => new[] { job.Caution, job.Fallback }).Append(kind.Caution).Append(kind.Words));
        Assert.DoesNotContain(texts, text => text?.Contains("safe", StringComparison.OrdinalIgnoreCase) ?? false);
    }

    [Fact]
    public void Crops_Counted_AreEnoughAndWithinReason()
    {
        Assert.True(Crops.All.Count >= 17, $"{Crops.All.Count} crops");
        Assert.All(Crops.All.Values, crop => Assert.True(crop.KeepsDays >= 1 && crop.ShedsAtMps is >= 10 and <= 50 && crop.Words.Length > 0, crop.Token));
    }
}
