using System.Text.Json;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Formats.Json;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.Points;

/// <summary>
/// Reads the point forecasts of the US weather service in JSON: the one by hours, and the grid from which it is made. A unit or
/// a time that is not understood refuses the whole forecast with its key: a wind in a wrong unit would be a wrong wind.
/// </summary>
internal static class PointForecastReader
{
    /// <summary>More in one list are refused; real ones have up to 160.</summary>
    private const int MostStatements = 1000;

    /// <summary>"properties.periods" with a start, an end and a wind each.</summary>
    public static ReadResult<Advisory> ReadHours(JsonElement root)
    {
        var faults = new List<ReadFault>();
        var layers = new ForecastLayers();
        var periods = root.Child("properties").Child("periods").Items().ToList();
        if (periods.Count > MostStatements) faults.Add(TooMany("properties/periods", periods.Count));
        for (var k = 0; k < periods.Count && faults.Count == 0; k++) ReadHour(periods[k], $"properties/periods[{k}]", layers, faults);
        return Finish(root, "US weather service, by the hour", layers, faults);
    }

    /// <summary>"properties.windSpeed.values" and its like, each value with an interval of its own.</summary>
    public static ReadResult<Advisory> ReadGrid(JsonElement root)
    {
        var faults = new List<ReadFault>();
        var layers = new ForecastLayers();
        ReadLayer(root, "windSpeed", Quantity.Speed, layers.WindMps, faults);
        ReadLayer(root, "windGust", Quantity.Speed, layers.GustMps, faults);
        ReadLayer(root, "quantitativePrecipitation", Quantity.Depth, layers.RainMm, faults);
        ReadLayer(root, "probabilityOfPrecipitation", Quantity.Chance, layers.RainChance, faults);
        ReadLayer(root, "probabilityOfThunder", Quantity.Chance, layers.Thunder, faults);
        ReadLayer(root, "heatIndex", Quantity.Temperature, layers.HeatIndexC, faults);
        return Finish(root, "US weather service, grid", layers, faults);
    }

    private static void ReadHour(JsonElement period, string key, ForecastLayers layers, List<ReadFault> faults)
    {
        if (StretchText.Between(CapTime.Parse(period.Child("startTime").Text() ?? ""), CapTime.Parse(period.Child("endTime").Text() ?? "")) is not { } when)
        {
            faults.Add(new(key, "startTime and endTime are no two times with an offset, one after the other"));
            return;
        }

        if (Quantity.SpeedOf(period.Child("windSpeed"), key + "/windSpeed", faults) is { } wind) layers.WindMps.Add(new(when, wind));
        if (Quantity.SpeedOf(period.Child("windGust"), key + "/windGust", faults) is { } gust) layers.GustMps.Add(new(when, gust));
        if (ReadMeasure(period, "probabilityOfPrecipitation", Quantity.Chance, key, faults) is { } rain) layers.RainChance.Add(new(when, rain));
        if (ReadHeat(period, key, faults) is { } heat) layers.HeatIndexC.Add(new(when, heat));
    }

    /// <summary>The forecast by the hour tells temperature and humidity, not how hot it feels.</summary>
    private static double? ReadHeat(JsonElement period, string key, List<ReadFault> faults)
    {
        var air = period.Child("temperature") is { ValueKind: JsonValueKind.Number } bare
            ? Quantity.Of(Quantity.Temperature, bare, period.Child("temperatureUnit").Text(), key + "/temperature", faults)
            : ReadMeasure(period, "temperature", Quantity.Temperature, key, faults);
        return air is { } airC && ReadMeasure(period, "relativeHumidity", Quantity.Chance, key, faults) is { } humidity ? HeatIndex.OfC(airC, humidity) : null;
    }

    /// <summary>An object with unitCode and value; null where it is not there or gives none.</summary>
    private static double? ReadMeasure(JsonElement period, string name, QuantityKind kind, string key, List<ReadFault> faults) =>
        period.Child(name).Child("value") is { } number ? Quantity.Of(kind, number, period.Child(name).Child("unitCode").Text(), $"{key}/{name}", faults) : null;

    private static void ReadLayer(JsonElement root, string name, QuantityKind kind, List<Statement> layer, List<ReadFault> faults)
    {
        var written = root.Child("properties").Child(name);
        var (unit, values) = (written.Child("uom").Text(), written.Child("values").Items().ToList());
        if (values.Count > MostStatements) faults.Add(TooMany($"properties/{name}", values.Count));
        for (var k = 0; k < values.Count && faults.Count == 0; k++)
        {
            // Null stands where the office gives no value; it says nothing.
            if (values[k].Child("value") is not { } number) continue;
            var key = $"properties/{name}/values[{k}]";
            if (StretchText.Interval(values[k].Child("validTime").Text()) is not { } when) faults.Add(new(key, "validTime is no interval such as 2022-02-03T06:00:00+00:00/PT3H"));
            else if (Quantity.Of(kind, number, unit, key, faults) is { } value) layer.Add(new(when, value));
        }
    }

    private static ReadResult<Advisory> Finish(JsonElement root, string source, ForecastLayers layers, List<ReadFault> faults)
    {
        var properties = root.Child("properties");
        if (GeoJsonPoint.Of(root.Child("geometry")) is not { } at) faults.Add(new("geometry", "gives no point and no polygon on the globe"));
        else if (CapTime.Parse((properties.Child("updateTime") ?? properties.Child("updated")).Text() ?? "") is not { } issued) faults.Add(new("properties/updateTime", "is no time with an offset"));
        else if (layers.WindMps.Count == 0 && faults.Count == 0) faults.Add(new("properties", "no wind is given for any time; a forecast without wind is not used"));
        else if (faults.Count == 0) return new PointForecast(source, at, issued, layers.Periods());
        return ReadResult.Bad<Advisory>(faults);
    }

    private static ReadFault TooMany(string key, int count) => new(key, $"{count} entries; more than {MostStatements} are not read");
}
