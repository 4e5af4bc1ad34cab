using System.Text.Json;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Notes;
using StormClock.Core.Formats.Points;

namespace StormClock.Core.Formats.Json;

/// <summary>Tells the messages in JSON apart by the keys they have, and hands over to the reader that fits.</summary>
internal static class JsonMessageReader
{
    public static ReadResult<IReadOnlyList<Advisory>> Read(ReadOnlyMemory<byte> bytes)
    {
        var json = JsonText.WithoutMark(bytes);
        return JsonSource.Read(json, root => Of(root, json));
    }

    private static ReadResult<IReadOnlyList<Advisory>> Of(JsonElement root, ReadOnlyMemory<byte> bytes)
    {
        if (root.Child("note") is not null) return NoteReader.Read(bytes).AsList();
        var properties = root.Child("properties");
        if (properties.Child("periods") is not null) return OfPeriods(root, properties);
        if (properties.Child("windSpeed").Child("values") is not null) return PointForecastReader.ReadGrid(root).AsList();
        if (properties.Child("forecastGridData") is not null) return Other("an index that tells where the forecasts of a point are", "fetch the address behind forecastHourly or forecastGridData");
        if (IsObservation(root)) return ObservationReader.Read(root);
        if (root.Child("features") is { } features) return OfFeatures(root, features);
        return root.Child("activeStorms") is not null
            ? Other("a list of messages (JSON, active storms)", "add it as a list, so that the messages in it are fetched")
            : Other("JSON of another kind", "point forecasts, observations and notes can be read");
    }

    /// <summary>The forecast by day and night has one range of wind for twelve hours and no gust: too coarse to plan by, and the hourly one stands beside it.</summary>
    private static ReadResult<IReadOnlyList<Advisory>> OfPeriods(JsonElement root, JsonElement? properties) =>
        properties.Child("forecastGenerator").Text() == "BaselineForecastGenerator" || properties.Child("periods").Items().Any(HasName)
            ? Other("a forecast by day and night in words", "take the hourly forecast of the same point (forecastHourly)")
            : PointForecastReader.ReadHours(root).AsList();

    private static ReadResult<IReadOnlyList<Advisory>> OfFeatures(JsonElement root, JsonElement features)
    {
        var first = ((JsonElement?)features).Items().Select(feature => (JsonElement?)feature).FirstOrDefault();
        if (first is null) return Other("an empty list (JSON)", "nothing is in it");
        if (IsObservation(first.Value)) return ObservationReader.Read(root);
        return Other("a list of messages (JSON)", "add it as a list, so that each message in it is read");
    }

    /// <summary>Known by its address too, because an observation may come without any value.</summary>
    private static bool IsObservation(JsonElement feature) =>
        feature.Child("properties").Child("timestamp") is not null
        || (feature.Child("id").Text() ?? "").Contains("/observations/", StringComparison.Ordinal);

    private static bool HasName(JsonElement period) => !string.IsNullOrEmpty(period.Child("name").Text());

    private static ReadResult<IReadOnlyList<Advisory>> Other(string name, string mend) => ReadFault.At(1, $"this is {name}; {mend}");
}
