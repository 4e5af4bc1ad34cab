using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Formats;

public class PointForecastReaderTests
{
    private const double Mph = 1609.344 / 3600;

    private static readonly Instant Noon = Instant.FromUtc(2027, 9, 21, 12, 0);

    [Fact]
    public void Hours_WordsAndObjects_GiveTheUpperEndInMps()
    {
        var read = InventedMessages.One<PointForecast>(InventedMessages.Hours);
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 15, 0), read.IssuedAt);
        Assert.Equal(40.01, read.At.LatDeg, 6);
        Assert.Equal(-70.01, read.At.LonDeg, 6);
        Assert.Equal(2, read.Periods.Count);
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 16, 0), read.Periods[0].From);
        Assert.Equal(15 * Mph, read.Periods[0].WindMps!.Value, 6);
        Assert.Null(read.Periods[0].GustMps);
        Assert.Equal(10.0, read.Periods[1].WindMps!.Value, 6);
        Assert.Equal(40 * Mph, read.Periods[1].GustMps!.Value, 6);
    }

    /// <summary>Some servers put the mark of UTF-8 first.</summary>
    [Fact]
    public void Hours_MarkOfUtf8First_AreReadAllTheSame()
    {
        byte[] marked = [.. System.Text.Encoding.UTF8.GetPreamble(), .. System.Text.Encoding.UTF8.GetBytes(InventedMessages.Hours)];
        var read = Assert.IsType<PointForecast>(MessageReader.Read(marked).Value);
        Assert.Equal(InventedMessages.One<PointForecast>(InventedMessages.Hours).Id, read.Id);
    }

    [Fact]
    public void Grid_LayersOfTheirOwnTimes_AreCutWhereAnyChanges()
    {
        var read = InventedMessages.One<PointForecast>(InventedMessages.Grid);
        Assert.Equal(
            [Hour(0, 6, 10, null, 12), Hour(6, 8, 20, 30, 4), Hour(8, 12, 20, null, 8), Hour(12, 36, 20, null, null), Hour(36, 48, null, null, null)],
            read.Periods.Select(Rounded));

        static ForecastPeriod Hour(int from, int to, double? wind, double? gust, double? rain) =>
            new(Noon + Duration.FromHours(from), Noon + Duration.FromHours(to), wind, gust, rain, 0.2);
    }

    /// <summary>90 °F at 60 % feels like 100 °F (the US weather service's chart, from memory).</summary>
    [Theory]
    [InlineData("""
        "temperature":90,"temperatureUnit":"F","relativeHumidity":{"unitCode":"wmoUnit:percent","value":60}
        """)]
    [InlineData("""
        "temperature":{"unitCode":"wmoUnit:degC","value":32.222},"relativeHumidity":{"unitCode":"wmoUnit:percent","value":60}
        """)]
    public void Hours_TemperatureAndHumidity_GiveTheHeatIndex(string measures)
    {
        var read = InventedMessages.One<PointForecast>(InventedMessages.Hours.Replace("\"number\":1", "\"number\":1," + measures));
        Assert.Equal(100, (read.Periods[0].HeatIndexC!.Value * 1.8) + 32, 0.5);
        Assert.Null(read.Periods[1].HeatIndexC);
    }

    [Fact]
    public void Hours_ChanceOfRain_IsTaken() =>
        Assert.Equal(0.7, InventedMessages.One<PointForecast>(InventedMessages.Hours.Replace("\"number\":1", """
            "number":1,"probabilityOfPrecipitation":{"unitCode":"wmoUnit:percent","value":70}
            """)).Periods[0].RainChance!.Value, 9);

    [Theory]
    [InlineData("wmoUnit:degC", 41, 41)]
    [InlineData("wmoUnit:degF", 103, 39.444)]
    public void Grid_HeatIndex_IsTakenInCelsius(string unit, double value, double heatC)
    {
        var layer = FormattableString.Invariant($$"""
            "heatIndex":{"uom":"{{unit}}","values":[{"validTime":"2027-09-21T12:00:00+00:00/PT1H","value":{{value}}}]},"windGust"
            """);
        Assert.Equal(heatC, InventedMessages.One<PointForecast>(InventedMessages.Grid.Replace("\"windGust\"", layer)).Periods[0].HeatIndexC!.Value, 0.001);
    }

    [Fact]
    public void Grid_RainSharedOut_KeepsItsDepth() =>
        Assert.Equal(24, InventedMessages.One<PointForecast>(InventedMessages.Grid).Periods.Sum(period => period.RainMm ?? 0), 9);

    /// <summary>The same hour twice with another wind, and a period across two: the larger wind counts, in either order.</summary>
    [Theory]
    [InlineData("""{"validTime":"2027-09-21T12:00:00+00:00/PT2H","value":36},{"validTime":"2027-09-21T13:00:00+00:00/PT2H","value":72},{"validTime":"2027-09-21T13:00:00Z/PT2H","value":54}""")]
    [InlineData("""{"validTime":"2027-09-21T13:00:00Z/2027-09-21T15:00:00Z","value":54},{"validTime":"2027-09-21T13:00:00+00:00/PT2H","value":72},{"validTime":"2027-09-21T12:00:00+00:00/PT120M","value":36}""")]
    public void Grid_OverlapsAndDuplicates_TheLargerCounts(string values)
    {
        var read = InventedMessages.One<PointForecast>(GridWith(values, "wmoUnit:km_h-1"));
        Assert.Equal([10.0, 20.0, 20.0], read.Periods.Select(period => Math.Round(period.WindMps!.Value, 6)));
        Assert.Equal(Noon + Duration.FromHours(3), read.Periods[^1].To);
    }

    [Theory]
    [InlineData("wmoUnit:degC", 10, "properties/windSpeed/values[0]", "degC")]
    [InlineData("", 10, "properties/windSpeed/values[0]", "unit")]
    [InlineData("wmoUnit:km_h-1", -1, "properties/windSpeed/values[0]", "beyond")]
    [InlineData("wmoUnit:km_h-1", 900, "properties/windSpeed/values[0]", "beyond")]
    public void Grid_WrongUnitOrValue_IsRefusedWithItsKey(string unit, int value, string key, string reason)
    {
        var values = FormattableString.Invariant($$"""{"validTime":"2027-09-21T12:00:00+00:00/PT2H","value":{{value}}}""");
        var fault = Assert.Single(InventedMessages.ReadAll(GridWith(values, unit)).Faults);
        Assert.Equal(key, fault.Where);
        Assert.Contains(reason, fault.Reason);
    }

    [Theory]
    [InlineData("2027-09-21T12:00:00+00:00")]
    [InlineData("2027-09-21T12:00:00/PT2H")]
    [InlineData("2027-09-21T12:00:00+00:00/PT0H")]
    [InlineData("2027-09-21T12:00:00+00:00/P40D")]
    public void Grid_TimeThatIsNone_IsRefusedWithItsKey(string time) =>
        Assert.Equal("properties/windSpeed/values[0]", InventedMessages.ReadAll(GridWith($$"""{"validTime":"{{time}}","value":1}""", "wmoUnit:km_h-1")).Faults[0].Where);

    [Theory]
    [InlineData("\"windSpeed\":\"10 to 15 mph\"", "\"windSpeed\":\"10 to 15 furlongs\"", "properties/periods[0]/windSpeed")]
    [InlineData("wmoUnit:km_h-1", "wmoUnit:Pa", "properties/periods[1]/windSpeed")]
    [InlineData("2027-09-21T12:00:00-04:00", "2027-09-21T12:00:00", "properties/periods[0]")]
    [InlineData("2027-09-21T15:00:00+00:00", "yesterday", "properties/updateTime")]
    [InlineData("-70.02,40.00", "-70.02,140.00", "geometry")]
    public void Hours_WhatIsWrong_IsRefusedWithItsKey(string right, string wrong, string key) =>
        Assert.Equal(key, InventedMessages.ReadAll(InventedMessages.Hours.Replace(right, wrong, StringComparison.Ordinal)).Faults[0].Where);

    [Fact]
    public void Grid_AcrossTheDateLine_HasItsMiddleThere()
    {
        var text = InventedMessages.Hours.Replace("-70.02", "179.99", StringComparison.Ordinal).Replace("-70.00", "-179.99", StringComparison.Ordinal);
        Assert.Equal(180, Math.Abs(InventedMessages.One<PointForecast>(text).At.LonDeg), 6);
    }

    /// <summary>Florida Panhandle, 3 February 2022: retyped 20.372 km/h to 23 UTC with gusts of 29.632, and the rain of that night.</summary>
    [Fact]
    public void Grid_RealPanhandle_HasItsNumbers()
    {
        var file = Path.Combine(Shared.Folder("nws-api"), "gridpoint-raw-TAE-58-65-2022-02-03.json");
        var read = InventedMessages.One<PointForecast>(File.ReadAllText(file));
        Assert.Equal(Instant.FromUtc(2022, 2, 4, 3, 15, 41), read.IssuedAt);
        Assert.Equal(Instant.FromUtc(2022, 2, 3, 21, 0), read.Periods[0].From);
        Assert.Equal(20.372 / 3.6, read.Periods[0].WindMps!.Value, 6);
        Assert.Equal(29.632 / 3.6, read.Periods[0].GustMps!.Value, 6);
        var night = read.Periods.Where(period => period.From >= Instant.FromUtc(2022, 2, 4, 6, 0) && period.To <= Instant.FromUtc(2022, 2, 4, 12, 0));
        Assert.Equal(2.032, night.Sum(period => period.RainMm!.Value), 6);
        Assert.All(read.Periods.Zip(read.Periods.Skip(1)), pair => Assert.True(pair.First.To <= pair.Second.From));
    }

    [Fact]
    public void Observations_MissingAndFailedValues_AreNull()
    {
        var read = InventedMessages.ReadAll(InventedMessages.Observations).Value!.Cast<Observation>().ToList();
        Assert.Equal(
            [
                new Observation("KXYZ", new GeoPoint(40, -70), Instant.FromUtc(2027, 9, 21, 15, 53), 10, null),
                new Observation("KXYZ", null, Instant.FromUtc(2027, 9, 21, 14, 53), null, 15),
            ],
            read.Select(one => one with { WindMps = one.WindMps is { } wind ? Math.Round(wind, 9) : null }));
    }

    private static string GridWith(string values, string unit) => $$$"""
        {"type":"Feature","geometry":{"type":"Point","coordinates":[-70.01,40.01]},
         "properties":{"updateTime":"2027-09-21T15:00:00+00:00","windSpeed":{"uom":"{{{unit}}}","values":[{{{values}}}]} } }
        """;

    private static ForecastPeriod Rounded(ForecastPeriod period) => period with
    {
        WindMps = period.WindMps is { } wind ? Math.Round(wind, 6) : null,
        GustMps = period.GustMps is { } gust ? Math.Round(gust, 6) : null,
        RainMm = period.RainMm is { } rain ? Math.Round(rain, 6) : null,
    };
}
