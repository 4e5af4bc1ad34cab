using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Stages;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Formats;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Tests.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Stages;

/// <summary>The official chance as a check on ours: where they differ the larger one counts for the stage.</summary>
public class OfficialChanceTests
{
    /// <summary>Where the members of advisory 16 on Ian bring 34 kt in some of ten.</summary>
    private static readonly GeoPoint Edge = new(26.6, -78.0);

    private static readonly Instant Now = SampleStorms.Ian16.IssuedAt;

    [Fact]
    public void Outlook_OfficialIsFarLarger_TakesItAndKeepsOurTime()
    {
        var alone = Outlook(Edge);
        var checkedBy = Outlook(Edge, Table("GFMX 266N 780W"));

        Assert.InRange(alone.Chance, 0.02, 0.60);
        Assert.Equal(0.83, checkedBy.Chance);
        Assert.Equal(alone.Earliest, checkedBy.Earliest);
        Assert.Equal((alone.Chance, "IAN wind speed probability table 16"), (checkedBy.Source.Larger!.OwnChance, checkedBy.Source.Larger.Table));
    }

    [Fact]
    public void Outlook_OfficialAgrees_ChangesNothing()
    {
        var (alone, checkedBy) = (Outlook(SampleStorms.FortMyers), Outlook(SampleStorms.FortMyers, Table("FT MYERS FL")));
        Assert.Equal(alone.Chance, checkedBy.Chance);
        Assert.Null(checkedBy.Source.Larger);
    }

    [Fact]
    public void Outlook_OfficialIsFarSmaller_ChangesNothing()
    {
        var small = Table("FT MYERS FL") with { Rows = [new("FT MYERS FL", 34, [new(12, 0, 0), new(24, 0, 0), new(36, 0, 0), new(48, 1, 1), new(72, 2, 3), new(96, 0, 3), new(120, 0, 3)])] };
        Assert.Equal(Outlook(SampleStorms.FortMyers).Chance, Outlook(SampleStorms.FortMyers, small).Chance);
    }

    [Theory]
    [InlineData("15", "AL092022")]
    [InlineData("16", "AL102022")]
    public void Outlook_TableOfAnotherAdvisory_ChangesNothing(string number, string storm) =>
        Assert.Equal(Outlook(Edge).Chance, Outlook(Edge, Table("GFMX 266N 780W") with { Number = number, StormId = storm }).Chance);

    [Theory]
    [InlineData(99, false)] // it blew there at the synoptic time
    [InlineData(97, true)]
    public void Outlook_OfficialAlreadyThere_IsLeftToOurs(int percent, bool counts)
    {
        int[] hours = [12, 24, 36, 48, 72, 96, 120];
        var table = Table("GFMX 266N 780W") with { Rows = [new("GFMX 266N 780W", 34, [.. hours.Select(hour => new PeriodChance(hour, hour == 12 ? percent : 0, percent))])] };
        Assert.Equal(counts, Outlook(Edge, table).Source.Larger is not null);
    }

    [Fact]
    public void Outlook_OursNeverBringsIt_TakesTheOfficialTimeToo()
    {
        var nowhere = new GeoPoint(45, -40);
        var outlook = Outlook(nowhere, Table("GFMX 450N 400W"));

        Assert.Null(Outlook(nowhere).Earliest);
        Assert.Equal(0.83, outlook.Chance);
        Assert.Equal(12 + 12 * 7.3 / 8, (outlook.Earliest!.Value - SampleStorms.Ian16.Synoptic).TotalHours, 1e-6);
        Assert.Equal(outlook.Earliest, outlook.GroundStop);
    }

    /// <summary>The rows of Fort Myers under another name.</summary>
    private static WindProbabilityAdvisory Table(string location)
    {
        var table = ProbabilityText.ReadGood(ProbabilityText.Ian16);
        return table with { Rows = [.. table.Rows.Where(row => row.Location == "FT MYERS FL").Select(row => row with { Location = location })] };
    }

    private static GardenOutlook Outlook(GeoPoint at, params WindProbabilityAdvisory[] tables)
    {
        var ledger = Alerts.Ledger([SampleStorms.Ian16, .. tables]);
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("tie", 60)) with { Sites = [Alerts.SiteAt(at)] };
        return GardenOutlook.Of(HazardTimeline.Of(ledger, book, Now, new MemberMemory().Members), book);
    }
}
