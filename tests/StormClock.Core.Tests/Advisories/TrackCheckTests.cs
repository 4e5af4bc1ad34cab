using StormClock.Core.Advisories;
using StormClock.Core.Tests.Formats;
using StormClock.Core.Tests.Hazards;

namespace StormClock.Core.Tests.Advisories;

/// <summary>Tracks that cannot be, by hand and through the reader.</summary>
public class TrackCheckTests
{
    private static readonly QuadrantRadii Round = new(100, 100, 100, 100);

    [Fact]
    public void Of_SoundStorm_FindsNothingAndChangesNothing()
    {
        var found = TrackCheck.Of(SampleStorms.Ian16);
        Assert.Empty(found.Impossible);
        Assert.Empty(found.Mended.Mends);
        Assert.Equivalent(SampleStorms.Ian16, found.Mended);
    }

    [Theory]
    [InlineData(12, 1190, false)]
    [InlineData(12, 1210, true)]
    [InlineData(12, 2000, true)]
    [InlineData(72, 2000, false)]
    public void Of_LongStep_IsImpossibleAbove100Kt(double hours, double wayNmi, bool refused)
    {
        var found = TrackCheck.Of(Storm(SampleStorms.Point(3, 0, -60, 70), SampleStorms.Point(3 + hours, 0, -60 + wayNmi / 60.04, 70)));
        Assert.Equal(refused, found.Impossible.Count > 0);
        if (refused) Assert.Contains("jump", found.Impossible[0].Reason);
    }

    [Theory]
    [InlineData(185, 460, false)]
    [InlineData(250, 1000, false)]
    [InlineData(251, 100, true)]
    [InlineData(400, 100, true)]
    [InlineData(100, 1005, true)]
    public void Of_WindOrReachBeyondAnyStorm_IsImpossible(double maxKt, double reachNmi, bool refused)
    {
        var found = TrackCheck.Of(Storm(SampleStorms.Point(3, 20, -60, 70, Round), SampleStorms.Point(24, 21, -62, maxKt, new(reachNmi, 100, 100, 100))));
        Assert.Equal(refused, found.Impossible.Count > 0);
        if (refused) Assert.Contains("beyond any storm", found.Impossible[0].Reason);
    }

    [Fact]
    public void Of_StepAcrossTheAntimeridian_IsNoJump() =>
        Assert.Empty(TrackCheck.Of(Storm(SampleStorms.Point(3, 20, 179, 70), SampleStorms.Point(12, 21, -179, 70))).Impossible);

    [Fact]
    public void Of_PointsBackInTime_IsImpossible()
    {
        var storm = Storm(SampleStorms.Point(3, 20, -60, 70), SampleStorms.Point(24, 21, -62, 70), SampleStorms.Point(12, 22, -64, 70));
        Assert.Contains("before that of the point above", Assert.Single(TrackCheck.Of(storm).Impossible).Reason);
    }

    [Fact]
    public void Of_SpecialAdvisoryWithAPointAlreadyPast_IsSound() =>
        Assert.Empty(TrackCheck.Of(Storm(SampleStorms.Point(13.75, 20, -60, 70), SampleStorms.Point(12, 19.9, -59.8, 70), SampleStorms.Point(24, 22, -62, 70))).Impossible);

    [Fact]
    public void Of_StrongerWindReachingFarther_WeakerIsTakenBeyondItAndNamed()
    {
        var mended = TrackCheck.Of(Storm(
            SampleStorms.Point(3, 20, -60, 100, Round, new(50, 120, 50, 50), new(60, 130, 20, 20)), SampleStorms.Point(24, 21, -62, 70, Round))).Mended;
        Assert.Equal(new QuadrantRadii(61, 131, 50, 50), mended.Now.Radii50);
        Assert.Equal(new QuadrantRadii(100, 132, 100, 100), mended.Now.Radii34);
        Assert.Equal(new QuadrantRadii(60, 130, 20, 20), mended.Now.Radii64);
        Assert.Equal(
            ["01/0300Z: 64 kt reaches farther than 50 kt; 50 kt is taken to reach 1 n mi beyond it", "01/0300Z: 50 kt reaches farther than 34 kt; 34 kt is taken to reach 1 n mi beyond it"],
            mended.Mends);
    }

    [Fact]
    public void Of_EqualRadii_StandAsWritten() =>
        Assert.Empty(TrackCheck.Of(Storm(SampleStorms.Point(3, 20, -60, 100, Round, Round), SampleStorms.Point(24, 21, -62, 70, Round))).Mended.Mends);

    [Theory]
    [InlineData("FORECAST VALID 01/0600Z 26.0N  74.9W", "FORECAST VALID 01/0600Z 26.0N  14.9W", 25)]
    [InlineData("REPEAT...CENTER LOCATED NEAR 24.1N", "REPEAT...CENTER LOCATED NEAR 24.2N", 0)]
    [InlineData("24.1N  70.2W AT 30/0900Z\nMAX", "24.1N  07.2W AT 30/0900Z\nMAX", 9)]
    public void Reading_PositionFarOff_IsRefusedAtItsLine(string good, string bad, int line)
    {
        var read = AdvisoryText.Read(AdvisoryText.Invented.Replace(good, bad));
        Assert.Equal(line == 0, read.IsGood);
        if (line > 0) Assert.Contains(read.Faults, fault => fault.Line == line && fault.Reason.Contains("jump"));
    }

    [Fact]
    public void Reading_RadiiInTheWrongOrder_AreMendedWithAWarning()
    {
        var read = AdvisoryText.ReadGood(AdvisoryText.Invented.Replace("34 KT...120NE", "34 KT... 20NE"));
        Assert.Equal(51, read.Forecast[0].Radii34!.Value.NeNmi);
        Assert.Contains("30/1800Z: 50 kt reaches farther than 34 kt", Assert.Single(read.Mends));
    }

    [Fact]
    public void Reading_EveryRealAdvisory_NeedsNoMending()
    {
        var read = Shared.Files("nhc-tcm", "*.txt").Concat(Shared.Files("nhc-tcm-old-formats", "*.txt"))
            .Select(file => StormClock.Core.Formats.ForecastAdvisory.ForecastAdvisoryReader.Read(File.ReadAllBytes(file)).Value).OfType<CycloneAdvisory>().ToList();
        Assert.Equal(587, read.Count);
        Assert.All(read, advisory => Assert.Empty(advisory.Mends));
    }

    private static CycloneAdvisory Storm(params SampleStorms.PointAtLead[] points) =>
        SampleStorms.Storm("AL992030", "TEST", "1", Instant.FromUtc(2030, 9, 1, 0, 0), points);
}
