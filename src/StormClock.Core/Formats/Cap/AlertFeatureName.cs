using System.Text.Json;

namespace StormClock.Core.Formats.Cap;

/// <summary>What an alert written as a GeoJSON feature is known by.</summary>
internal sealed record AlertFeatureName(string Id, string Event, Instant? Sent)
{
    /// <summary>
    /// Null when this is no such feature: an object whose "properties" have a "messageType". Looks only as far as needed,
    /// and builds nothing for what it passes.
    /// </summary>
    public static AlertFeatureName? Of(ReadOnlySpan<byte> bytes)
    {
        if (!JsonText.IsObject(bytes)) return null;
        var json = new Utf8JsonReader(JsonText.WithoutMark(bytes));
        try
        {
            json.Read();
            while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                var isProperties = json.ValueTextEquals("properties"u8);
                json.Read();
                if (isProperties && json.TokenType == JsonTokenType.StartObject) return OfProperties(ref json);
                json.Skip();
            }
        }
        catch (Exception error) when (JsonText.IsFaultOfBytes(error))
        {
            return null;
        }

        return null;
    }

    private static AlertFeatureName? OfProperties(ref Utf8JsonReader json)
    {
        var (id, title, sent, isAlert) = ("", "", "", false);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var name = json.ValueTextEquals("id"u8) ? 'i' : json.ValueTextEquals("event"u8) ? 'e' : json.ValueTextEquals("sent"u8) ? 's' : ' ';
            isAlert |= json.ValueTextEquals("messageType"u8);
            json.Read();
            if (name == 'i') id = TextOf(ref json);
            if (name == 'e') title = TextOf(ref json);
            if (name == 's') sent = TextOf(ref json);
            json.Skip();
        }

        return isAlert ? new AlertFeatureName(id, title, CapTime.Parse(sent)) : null;
    }

    private static string TextOf(ref Utf8JsonReader json) => json.TokenType == JsonTokenType.String ? json.GetString()! : "";
}
