using CsCheck;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class PeakGustTests
{
    /// <summary>Peaks of 0.0, 0.1 … 99.9 kt over the sea.</summary>
    private static readonly WindMembers Members = WithPeaks([.. Enumerable.Range(0, 1000).Select(m => m * 0.1f)]);

    // Speed at a height over the gust at 10 m and shelter by science.md 2.4 (D, C); 10, 50 and 90 kt × 1.30.
    [Theory]
    [InlineData(1, Terrain.Suburb, Exposure.Open, 0.61)]
    [InlineData(1, Terrain.OpenFarmland, Exposure.Open, 0.785)]
    [InlineData(2, Terrain.OpenCoast, Exposure.Open, 0.945)]
    [InlineData(2, Terrain.OpenFarmland, Exposure.PartlySheltered, 0.845 * 0.85)]
    [InlineData(2, Terrain.Suburb, Exposure.Sheltered, 0.674 * 0.7)]
    [InlineData(2, Terrain.Suburb, Exposure.Funnel, 0.674 * 1.2)]
    [InlineData(0.2, Terrain.OpenFarmland, Exposure.Open, 0.785)]
    public void At_HeightTerrainAndShelter_ScalesEveryQuantile(double height, Terrain terrain, Exposure exposure, double factor)
    {
        var gust = PeakGust.At(Members, height, terrain, exposure);
        Assert.Equal(10 * 1.30 * factor * Wind.MpsPerKt, gust.LowMps, 0.05);
        Assert.Equal(50 * 1.30 * factor * Wind.MpsPerKt, gust.MedianMps, 0.05);
        Assert.Equal(90 * 1.30 * factor * Wind.MpsPerKt, gust.HighMps, 0.1);
    }

    [Fact]
    public void At_OneMember_IsThatMember()
    {
        var gust = PeakGust.At(WithPeaks([60]), 10, Terrain.OpenFarmland, Exposure.Open);
        Assert.Equal((gust.LowMps, gust.HighMps), (gust.MedianMps, gust.MedianMps));
        Assert.Equal(60 * 1.30 * Wind.MpsPerKt, gust.MedianMps, 0.05);
    }

    [Fact]
    public void At_AnyMembers_RisesWithShareHeightAndOpenness() =>
        Gen.Select(Gen.Float[0, 150].Array[1, 60], Gen.Double[0.1, 12], Gen.Enum<Terrain>()).Sample((peaks, height, terrain) =>
        {
            var members = WithPeaks(peaks);
            var gust = PeakGust.At(members, height, terrain, Exposure.PartlySheltered);
            return gust.LowMps <= gust.MedianMps
                && gust.MedianMps <= gust.HighMps
                && gust.HighMps <= PeakGust.At(members, height + 1, terrain, Exposure.PartlySheltered).HighMps
                && gust.HighMps <= PeakGust.At(members, height, terrain, Exposure.Open).HighMps
                && gust.HighMps >= PeakGust.At(members, height, terrain, Exposure.Sheltered).HighMps;
        });

    private static WindMembers WithPeaks(float[] peaks)
    {
        var never = Array.ConvertAll(peaks, _ => float.NaN);
        return new(Instant.FromUtc(2030, 9, 1, 0, 0), [34], [never], [never], peaks, 120);
    }
}
