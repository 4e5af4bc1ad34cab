using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime.Serialization.SystemTextJson;

namespace StormClock.Service.Commands;

/// <summary>The one way in which commands and the API write JSON: camel case, times in UTC to the second, nulls kept.</summary>
internal static class Json
{
    public static readonly JsonSerializerOptions Options = Make();

    public static void Print<T>(T value) => Console.Out.WriteLine(JsonSerializer.Serialize(value, Options));

    /// <summary>Makes options write so.</summary>
    public static void Describe(JsonSerializerOptions options)
    {
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Converters.Add(new InstantToTheSecond());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower));
        options.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
    }

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web) { WriteIndented = true };
        Describe(options);
        return options;
    }

    private sealed class InstantToTheSecond : JsonConverter<Instant>
    {
        private static readonly NodaTime.Text.InstantPattern Pattern = NodaTime.Text.InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss'Z'");

        public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Pattern.Parse(reader.GetString() ?? "").GetValueOrThrow();

        public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options) =>
            writer.WriteStringValue(Pattern.Format(value));
    }
}
