using StormClock.Core.Hazards;
using StormClock.Core.Tests.Hazards;
using StormClock.Core.Units;
using StormClock.Core.Worth;

namespace StormClock.Core.Tests.Worth;

public class PeakGustsTests
{
    [Fact]
    public void GivenGale_OfIan_AreAHundredAscendingGustsAbove34Kt()
    {
        var peaks = PeakGusts.GivenGale(WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, [34]));
        Assert.Equal(PeakGusts.Most, peaks.At10MMps.Count);
        Assert.Equal(peaks.At10MMps.Order(), peaks.At10MMps);
        // Every member that brings 34 kt peaks at 34 kt or more: times 1.30 (science.md 2.3), less the step of its search.
        Assert.True(peaks.At10MMps[0] > Wind.KtToMps(33) * 1.30);
        Assert.InRange(peaks.HighMps, peaks.At10MMps[49], 120);
    }

    [Fact]
    public void GivenGale_FarAway_TakesAllMembers()
    {
        var peaks = PeakGusts.GivenGale(WindOutlook.At(SampleStorms.Ian16, new(60, 10), [34]));
        Assert.Equal(PeakGusts.Most, peaks.At10MMps.Count);
        Assert.True(peaks.HighMps < Wind.KtToMps(34));
    }

    [Fact]
    public void GivenGale_SingleMember_IsItsPeak()
    {
        var members = new WindMembers(Instant.FromUtc(2027, 9, 1, 0, 0), [34], [[40f]], [[50f]], [60f], 120);
        Assert.Equal(Wind.KtToMps(60) * 1.30, Assert.Single(PeakGusts.GivenGale(members).At10MMps), 1e-6);
    }
}
