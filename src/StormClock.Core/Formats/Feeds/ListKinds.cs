using System.Text.Json;

namespace StormClock.Core.Formats.Feeds;

internal enum ListKind { None, Xml, Storms, Alerts }

/// <summary>Tells the kinds of lists apart by their root.</summary>
internal static class ListKinds
{
    private const int BytesOfHead = 64 * 1024;

    public static ListKind Of(ReadOnlySpan<byte> bytes)
    {
        if (JsonText.IsObject(bytes)) return OfJson(bytes);
        return XmlListName.Of(bytes[..Math.Min(bytes.Length, BytesOfHead)].ToArray()) is null ? ListKind.None : ListKind.Xml;
    }

    /// <summary>By the names at the top of the object; the values of the others are skipped.</summary>
    private static ListKind OfJson(ReadOnlySpan<byte> bytes)
    {
        var json = new Utf8JsonReader(JsonText.WithoutMark(bytes));
        try
        {
            json.Read();
            while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                var kind = json.ValueTextEquals("features"u8) ? ListKind.Alerts : json.ValueTextEquals("activeStorms"u8) ? ListKind.Storms : ListKind.None;
                json.Read();
                if (kind != ListKind.None && json.TokenType == JsonTokenType.StartArray) return kind;
                json.Skip();
            }
        }
        catch (Exception error) when (JsonText.IsFaultOfBytes(error))
        {
            return ListKind.None;
        }

        return ListKind.None;
    }
}
