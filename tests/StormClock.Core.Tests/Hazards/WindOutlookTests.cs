using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class WindOutlookTests
{
    private static readonly Instant Origin = Instant.FromUtc(2030, 9, 1, 0, 0);

    [Fact]
    public void Combine_TwoStorms_TakesTheFirstArrivalAndTheLastEnd()
    {
        float never = float.NaN;
        var first = Members(Origin, [10, never, never], [20, never, never], [40, 10, 20], 120);
        var later = Members(Origin + Duration.FromHours(6), [1, 2, never], [3, 4, never], [60, 50, 30], 96);
        var both = WindOutlook.Combine([first, later]);

        // The second storm's members are taken one place on: 2, never, 1; and count from 6 h later.
        Assert.Equal(Origin, both.Origin);
        Assert.Equal([8, never, 7], both.ArrivalHours(34).ToArray());
        Assert.Equal([20, never, 9], both.EndHours(34).ToArray());
        Assert.Equal([50, 30, 60], both.PeakKt.ToArray());
        Assert.Equal(102, both.HorizonHours);
    }

    [Fact]
    public void Combine_OneMemberWithMany_HoldsForAll()
    {
        float never = float.NaN;
        var many = Members(Origin, [10, never], [20, never], [40, 10], 120);
        var lone = Members(Origin, [15], [16], [35], 120);
        var both = WindOutlook.Combine([many, lone]);
        Assert.Equal([10, 15], both.ArrivalHours(34).ToArray());
        Assert.Equal([20, 16], both.EndHours(34).ToArray());
    }

    [Fact]
    public void Combine_DifferentCounts_IsRefused() =>
        Assert.Throws<ArgumentException>(() => WindOutlook.Combine(
            [Members(Origin, [1, 2], [1, 2], [1, 2], 1), Members(Origin, [1, 2, 3], [1, 2, 3], [1, 2, 3], 1)]));

    [Fact]
    public void At_OtherBasin_SpreadsItsTracksDifferently()
    {
        // science.md 3.3: eastern Pacific 0.95 (R2), central Pacific 1.1, other agencies 1.2 (C).
        var whole = ErrorStatistics.Atlantic.TrackScale;
        Assert.Equal(whole, ErrorStatistics.For("AL092022").TrackScale, 1e-12);
        Assert.Equal(whole * 0.95, ErrorStatistics.For("EP092023").TrackScale, 1e-12);
        Assert.Equal(whole * 1.1, ErrorStatistics.For("CP012020").TrackScale, 1e-12);
        Assert.Equal(whole * 1.2, ErrorStatistics.For("WP012020").TrackScale, 1e-12);

        var far = new Core.Units.GeoPoint(29, -79);
        double[] gale = [34];
        var atlantic = WindOutlook.At(SampleStorms.Ian16, far, gale);
        var elsewhere = WindOutlook.At(SampleStorms.Ian16 with { StormId = "WP092022" }, far, gale);
        Assert.NotEqual(atlantic.ArrivalHours(34).ToArray(), elsewhere.ArrivalHours(34).ToArray());
    }

    private static WindMembers Members(Instant origin, float[] arrivals, float[] ends, float[] peaks, double horizon) =>
        new(origin, [34], [arrivals], [ends], peaks, horizon);
}
