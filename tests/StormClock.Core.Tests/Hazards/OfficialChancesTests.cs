using StormClock.Core.Hazards;
using StormClock.Core.Tests.Formats;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class OfficialChancesTests
{
    private static readonly GeoPoint FortMyers = ProbabilityPlaces.Find("FT MYERS FL")!.Value;

    private static readonly OfficialChances Official = OfficialChances.At(ProbabilityText.ReadGood(ProbabilityText.Ian16), FortMyers)!;

    /// <summary>As issued with advisory 16 on Ian.</summary>
    [Theory]
    [InlineData(34, 12, 0.01)]
    [InlineData(34, 36, 0.61)]
    [InlineData(34, 120, 0.83)]
    [InlineData(50, 48, 0.34)]
    [InlineData(64, 24, 0)]
    [InlineData(64, 72, 0.20)]
    public void By_ListedLocation_IsTheTotalOfItsRow(double wind, int lead, double expected) => Assert.Equal(expected, Official.By(wind, lead));

    [Fact]
    public void By_ListedLocationWithoutRowForThatWind_IsBelowTheLeast()
    {
        var keyWest = OfficialChances.At(ProbabilityText.ReadGood(ProbabilityText.Ian16), ProbabilityPlaces.Find("KEY WEST FL")!.Value)!;
        Assert.Equal((0.22, 0), (keyWest.Chance(50), keyWest.Chance(64)));
        Assert.Null(keyWest.Earliest(64));
    }

    [Theory]
    [InlineData(14.9, true)]
    [InlineData(15.1, false)]
    public void At_DistanceFromTheLocation_CountsWithin15(double northNmi, bool counts)
    {
        var place = FortMyers with { LatDeg = FortMyers.LatDeg + northNmi / 60.04 };
        Assert.Equal(counts, OfficialChances.At(ProbabilityText.ReadGood(ProbabilityText.Ian16), place) is not null);
    }

    [Fact]
    public void At_TwoLocationsNear_TakesTheNearest()
    {
        var text = ProbabilityText.Ian16.Replace("KEY WEST FL ", "NAPLES FL   ").Replace("GFMX 290N 850W", "GFMX 263N 818W");
        var between = new GeoPoint(26.35, -81.80);
        Assert.Equal("GFMX 263N 818W", OfficialChances.At(ProbabilityText.ReadGood(text), between)!.Location);
    }

    [Fact]
    public void At_NameWithoutPosition_IsLeftOut() =>
        Assert.Null(OfficialChances.At(ProbabilityText.ReadGood(ProbabilityText.Ian16.Replace("FT MYERS FL", "ATLANTIS FL")), FortMyers));

    /// <summary>A tenth of 83 % is used up at 8.3 %: 1 % by 12 h, 9 % by 24 h, so at 12 h + 12 h × 7.3 / 8.</summary>
    [Fact]
    public void Earliest_Row_IsWhereATenthOfItsChanceIsUsedUp() =>
        Assert.Equal(12 + 12 * 7.3 / 8, (Official.Earliest(34)!.Value - Instant.FromUtc(2022, 9, 27, 0, 0)).TotalHours, 1e-6);
}
