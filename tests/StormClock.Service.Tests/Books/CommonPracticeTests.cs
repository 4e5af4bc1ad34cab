using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>What a gardener would expect of things given by kind alone. Common practice, no source.</summary>
public class CommonPracticeTests
{
    private static Item Thing(string keys)
    {
        var read = GardenReader.Read($$"""
            garden: {id: quay, name: Quay, zone: America/New_York, units: us}
            people: [{id: ada, name: Ada, role: gardener, ladder: alone}, {id: bo, name: Bo}]
            sites: [{id: home, name: Home, latitude: 30.1, longitude: -84.2}]
            areas: [{id: yard, name: Yard, site: home}]
            items: [{id: thing, area: yard, {{keys}}}]
            """, "quay.yaml");
        Assert.True(read.IsGood, string.Join("\n", read.Faults));
        return read.Value!.Items[0];
    }

    [Fact]
    public void PotRootedThrough_UsualJobs_TieItAndNeverMoveIt()
    {
        Assert.Contains(Thing("kind: potted_plant, count: 1").Jobs, job => job.Kind == JobKind.Move);
        var rooted = Thing("kind: potted_plant, count: 3, standing: rooted_through");
        var tie = Assert.Single(rooted.Jobs);
        Assert.Equal((JobKind.Tie, true, 26), (tie.Kind, tie.Typical, tie.Minutes));
        Assert.Contains("roots", tie.Caution);
    }

    [Fact]
    public void BrittleHangingThings_ComeInOnTheLastRound() =>
        Assert.All(Thing("kind: brittle_hanging, count: 2").Jobs.Where(job => job.Kind == JobKind.TakeDown), job => Assert.True(job.LastRound));

    /// <summary>Growth is cut early, while it is still taken away: never on the last round.</summary>
    [Theory]
    [InlineData("climber")]
    [InlineData("shrub")]
    [InlineData("hedge")]
    public void ThinWhippyGrowth_IsNeverCutOnTheLastRound(string kind) =>
        Assert.DoesNotContain(Thing($"kind: {kind}, count: 1, jobs: [{{kind: prune, minutes: 20}}]").Jobs, job => job.LastRound);

    [Fact]
    public void TallCrop_UsualJobs_BundleIt() => Assert.Contains(Thing("kind: tall_crop, count: 20, height: 11 ft").Jobs, job => job.Kind is JobKind.Bundle or JobKind.Tie);

    [Fact]
    public void KindAndCountAlone_GiveSensibleFiguresMarkedTypical()
    {
        var tubs = Thing("kind: potted_tree, count: 2");
        Assert.True(tubs is { ValueTypical: true, Written.MassKg: null, Build.MassKg: > 10 and < 100 });
        Assert.All(tubs.Jobs, job => Assert.True(job.Typical));
    }
}
