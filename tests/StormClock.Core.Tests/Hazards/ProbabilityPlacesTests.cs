using StormClock.Skill.Score;
using StormClock.Core.Hazards;
using StormClock.Core.Tests.Formats;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class ProbabilityPlacesTests
{
    [Theory]
    [InlineData("GFMX 290N 850W", 29.0, -85.0)]
    [InlineData("GFMX 250N 960W", 25.0, -96.0)]
    [InlineData("15N 105W", 15, -105)]
    [InlineData("30N 120W", 30, -120)]
    public void Find_PositionInTheName_IsRead(string name, double lat, double lon) =>
        Assert.Equal(new GeoPoint(lat, lon), ProbabilityPlaces.Find(name));

    /// <summary>Against positions recalled apart from the file (M), to catch a slip of sign or of the wrong town.</summary>
    [Theory]
    [InlineData("FT MYERS FL", 26.6, -81.9)]
    [InlineData("LA PAZ", 24.1, -110.3)] // Baja California, not the inland village of that name
    [InlineData("SAN ANDRES", 12.6, -81.7)]
    [InlineData("HIBERNIA OILFD", 46.7, -48.8)]
    [InlineData("PRAIA CVI", 14.9, -23.5)]
    public void Find_KnownName_IsThere(string name, double lat, double lon) =>
        Assert.InRange(GreatCircle.DistanceNmi(new(lat, lon), ProbabilityPlaces.Find(name)!.Value), 0, 10);

    [Theory]
    [InlineData("ATLANTIS")]
    [InlineData("")]
    [InlineData("GFMX 950N 850W")]
    [InlineData("GFMX 290N 8500W")]
    public void Find_UnknownName_IsNull(string name) => Assert.Null(ProbabilityPlaces.Find(name));

    [Fact]
    public void Find_EveryNameInTheRealTexts_IsKnown()
    {
        var names = Shared.Files("nhc-pws", "*.txt").SelectMany(file => ProbabilityText.ReadGood(File.ReadAllText(file)).Rows).Select(row => row.Location).Distinct().ToList();
        Assert.Equal(242, names.Count);
        Assert.DoesNotContain(names, name => ProbabilityPlaces.Find(name) is null);
    }

    /// <summary>Centres of towns of those names, which may lie some way off the places meant.</summary>
    [Fact]
    public void Find_NamesWithTownCentres_AreNearThem()
    {
        var towns = File.ReadLines(Path.Combine(Shared.Folder("geo"), "pws_location_coordinates_approx.csv")).Skip(1).Select(line => line.Split(','));
        var far = from cells in towns
                  let town = new GeoPoint(ClockCase.Number(cells[1]), ClockCase.Number(cells[2]))
                  where ProbabilityPlaces.Find(cells[0]) is { } at && GreatCircle.DistanceNmi(at, town) > 13.1
                  select cells[0];

        // The list beside the repository has an inland village for La Paz in Baja California.
        Assert.Equal(["LA PAZ"], far);
    }
}
