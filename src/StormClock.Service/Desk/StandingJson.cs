using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime.Serialization.SystemTextJson;
using StormClock.Core;

namespace StormClock.Service.Desk;

/// <summary>A garden's standing as text for the store, and back.</summary>
internal static class StandingJson
{
    public static readonly JsonSerializerOptions Options = new JsonSerializerOptions { Converters = { new JsonStringEnumConverter() } }
        .ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    /// <summary>Without the plan in force, which is kept by itself and written more rarely.</summary>
    public static string Write(GardenStanding standing) => JsonSerializer.Serialize(standing with { Kept = null }, Options);

    public static GardenStanding Read(string json) =>
        JsonSerializer.Deserialize<GardenStanding>(json, Options) ?? throw new JsonException("An empty standing was stored.");
}
