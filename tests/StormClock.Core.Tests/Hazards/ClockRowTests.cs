using System.Text.Json;
using StormClock.Core.Hazards;
using StormClock.Core.Tests.Formats;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class ClockRowTests
{
    private static readonly JsonSerializerOptions CamelCase = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    [Fact]
    public void Of_Ian16_SerializesToTheShapeOfTheClockCommand()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, ClockRow.ThresholdsKt);
        using var json = JsonDocument.Parse(JsonSerializer.Serialize(ClockRow.Of(SampleStorms.Ian16, "FORT MYERS FL", SampleStorms.FortMyers, members), CamelCase));
        var row = json.RootElement;
        Assert.Equal(["storm", "advisory", "issued", "place", "wind", "peakGustMps", "windFrom", "officialLocation", "sourcesDiffer"], row.EnumerateObject().Select(property => property.Name));
        Assert.Equal("AL092022", row.GetProperty("storm").GetString());
        Assert.Equal("16", row.GetProperty("advisory").GetString());
        Assert.Equal("2022-09-27T03:00:00Z", row.GetProperty("issued").GetString());
        Assert.Equal("FORT MYERS FL", row.GetProperty("place").GetString());

        var winds = row.GetProperty("wind").EnumerateArray().ToArray();
        Assert.Equal(["34", "50", "64"], winds.Select(wind => wind.GetProperty("thresholdKt").GetRawText()));
        Assert.Equal(
            ["thresholdKt", "chance", "chanceBy", "earliestReasonable", "mostLikely", "latest", "end", "totalTenPercent", "officialChance"],
            winds[0].EnumerateObject().Select(property => property.Name));
        Assert.Equal(
            ["12", "24", "36", "48", "72", "96", "120"], winds[0].GetProperty("chanceBy").EnumerateObject().Select(property => property.Name));
        Assert.EndsWith("Z", winds[0].GetProperty("mostLikely").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PlaceOutOfReach_HasNullTimes()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, new(60, 10), ClockRow.ThresholdsKt);
        var row = ClockRow.Of(SampleStorms.Ian16, "FAR", new(60, 10), members);
        var wind = row.Wind[0];
        Assert.Null(row.WindFrom);
        Assert.Equal(0, wind.Chance);
        Assert.Null(wind.EarliestReasonable);
        Assert.Null(wind.End);
    }

    /// <summary>The centre is forecast to come from the south-west and to go by to the north: wind from the east first, from the west at the end.</summary>
    [Fact]
    public void Of_CentrePassingToTheWest_HasWindFromTheEastFirst()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, ClockRow.ThresholdsKt);
        var from = ClockRow.Of(SampleStorms.Ian16, "FORT MYERS FL", SampleStorms.FortMyers, members).WindFrom!;
        Assert.InRange(from.ArrivalDeg, 45, 135);
        Assert.InRange(from.EndDeg, 180, 300);
    }

    [Fact]
    public void Of_WithOfficialChances_MixesThemInAt50And64AndNotAt34()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, ClockRow.ThresholdsKt);
        var official = OfficialChances.At(ProbabilityText.ReadGood(ProbabilityText.Ian16), SampleStorms.FortMyers);
        var (ours, mixed) = (ClockRow.Of(SampleStorms.Ian16, "FORT MYERS FL", SampleStorms.FortMyers, members), ClockRow.Of(SampleStorms.Ian16, "FORT MYERS FL", SampleStorms.FortMyers, members, official));

        Assert.Equal(("FT MYERS FL", false), (mixed.OfficialLocation, mixed.SourcesDiffer));
        Assert.Equal([0.83, 0.46, 0.21], mixed.Wind.Select(wind => wind.OfficialChance!.Value));
        Assert.Equal(ours.Wind[0].ChanceBy, mixed.Wind[0].ChanceBy);
        Assert.Equal(0.85 * ours.Wind[1].Chance + 0.15 * 0.46, mixed.Wind[1].Chance, 1e-4);
        Assert.Equal(0.5 * ours.Wind[2].ChanceBy["48"] + 0.5 * 0.15, mixed.Wind[2].ChanceBy["48"], 1e-4);
        Assert.Equal(ours.Wind.Select(wind => wind.MostLikely), mixed.Wind.Select(wind => wind.MostLikely));
    }

    [Fact]
    public void Of_OfficialChancesFarAbove_SaysSoAndKeepsStrongerWindsNoLikelierThanWeaker()
    {
        var atSea = new GeoPoint(45, -40);
        var members = WindOutlook.At(SampleStorms.Ian16, atSea, ClockRow.ThresholdsKt);
        var table = ProbabilityText.ReadGood(ProbabilityText.Ian16.Replace("FT MYERS FL   ", "GFMX 450N 400W"));
        var row = ClockRow.Of(SampleStorms.Ian16, "AT SEA", atSea, members, OfficialChances.At(table, atSea));

        Assert.True(row.SourcesDiffer);
        Assert.Equal([0, 0, 0], row.Wind.Select(wind => wind.Chance));
        Assert.Equal(0.83, row.Wind[0].OfficialChance);
    }
}
