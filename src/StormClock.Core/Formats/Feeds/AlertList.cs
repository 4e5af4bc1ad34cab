using System.Text.Json;
using StormClock.Core.Formats.Cap;

namespace StormClock.Core.Formats.Feeds;

/// <summary>Reads the weather service's list of alerts (GeoJSON); each feature is one message, in the bytes it stands in.</summary>
internal static class AlertList
{
    public static ReadResult<FeedIndex> Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            return ReadList(JsonText.WithoutMark(bytes));
        }
        catch (Exception error) when (JsonText.IsFaultOfBytes(error))
        {
            return JsonText.FaultOf(error);
        }
    }

    private static ReadResult<FeedIndex> ReadList(ReadOnlyMemory<byte> bytes)
    {
        var json = new Utf8JsonReader(bytes.Span);
        var (title, updated) = ("", default(Instant?));
        var entries = new List<FeedEntry>();
        json.Read();
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var name = json.GetString();
            json.Read();
            if (name == "title" && json.TokenType == JsonTokenType.String) title = json.GetString()!;
            if (name == "updated" && json.TokenType == JsonTokenType.String) updated = CapTime.Parse(json.GetString()!);
            if (name == "features" && json.TokenType == JsonTokenType.StartArray)
            {
                if (Features(ref json, bytes, entries) is { } fault) return fault;
            }
            else
            {
                json.Skip();
            }
        }

        while (json.Read()) { }
        return new FeedIndex(title, updated, entries);
    }

    private static ReadFault? Features(ref Utf8JsonReader json, ReadOnlyMemory<byte> bytes, List<FeedEntry> entries)
    {
        while (json.Read() && json.TokenType != JsonTokenType.EndArray)
        {
            var begin = (int)json.TokenStartIndex;
            json.Skip();
            var feature = bytes[begin..(int)json.BytesConsumed];
            if (AlertFeatureName.Of(feature.Span) is not { } name)
            {
                return new ReadFault($"features[{entries.Count}]", "is no alert (properties with a messageType); a list of alerts is needed here");
            }

            entries.Add(new FeedEntry(name.Sent is { } sent ? $"{name.Id} {sent}" : name.Id, name.Event, feature, null, name.Sent));
            if (entries.Count > FeedIndexReader.MostEntries) return FeedIndexReader.TooMany();
        }

        return null;
    }
}
