using System.Text.Json;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class ClockRowTests
{
    private static readonly JsonSerializerOptions CamelCase = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    [Fact]
    public void Of_Ian16_SerializesToTheShapeOfTheClockCommand()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, ClockRow.ThresholdsKt);
        using var json = JsonDocument.Parse(JsonSerializer.Serialize(ClockRow.Of(SampleStorms.Ian16, "FORT MYERS FL", members), CamelCase));
        var row = json.RootElement;
        Assert.Equal(["storm", "advisory", "issued", "place", "wind"], row.EnumerateObject().Select(property => property.Name));
        Assert.Equal("AL092022", row.GetProperty("storm").GetString());
        Assert.Equal("16", row.GetProperty("advisory").GetString());
        Assert.Equal("2022-09-27T03:00:00Z", row.GetProperty("issued").GetString());
        Assert.Equal("FORT MYERS FL", row.GetProperty("place").GetString());

        var winds = row.GetProperty("wind").EnumerateArray().ToArray();
        Assert.Equal(["34", "50", "64"], winds.Select(wind => wind.GetProperty("thresholdKt").GetRawText()));
        Assert.Equal(
            ["thresholdKt", "chance", "chanceBy", "earliestReasonable", "mostLikely", "latest", "end"],
            winds[0].EnumerateObject().Select(property => property.Name));
        Assert.Equal(
            ["12", "24", "36", "48", "72", "96", "120"], winds[0].GetProperty("chanceBy").EnumerateObject().Select(property => property.Name));
        Assert.EndsWith("Z", winds[0].GetProperty("mostLikely").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PlaceOutOfReach_HasNullTimes()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, new(60, 10), ClockRow.ThresholdsKt);
        var wind = ClockRow.Of(SampleStorms.Ian16, "FAR", members).Wind[0];
        Assert.Equal(0, wind.Chance);
        Assert.Null(wind.EarliestReasonable);
        Assert.Null(wind.End);
    }
}
