using System.Text.Json;

namespace StormClock.Core.Formats.Json;

/// <summary>Bytes to JSON, bounded, with faults that name a line; texts and names that are broken count as not there.</summary>
internal static class JsonSource
{
    /// <summary>Larger files are refused unread; the largest list at hand has 1.8 MB, the largest forecast 0.13 MB.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>Deeper ones are refused; the forecasts need eight levels.</summary>
    private const int MostLevels = 32;

    private static readonly JsonDocumentOptions Bounded = new() { MaxDepth = MostLevels };

    /// <summary>The one object that the bytes hold, given to <paramref name="read"/>.</summary>
    public static ReadResult<T> Read<T>(ReadOnlyMemory<byte> bytes, Func<JsonElement, ReadResult<T>> read)
        where T : class
    {
        if (bytes.Length > MostBytes) return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB; such JSON is not read", 1);
        try
        {
            using var document = JsonDocument.Parse(bytes, Bounded);
            return document.RootElement.ValueKind == JsonValueKind.Object
                ? read(document.RootElement)
                : ReadFault.At(1, "this is JSON, but not one object; no message that is known looks so");
        }
        catch (JsonException fault)
        {
            return ReadFault.At((int)(fault.LineNumber ?? 0) + 1, "is not well-formed JSON, or ends too early: fetch it again");
        }
    }

    /// <summary>The value of a key, null when it is not there, is null, or the object is none.</summary>
    public static JsonElement? Child(this JsonElement element, string name)
    {
        if (element.ValueKind != JsonValueKind.Object) return null;
        try
        {
            return element.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;
        }
        catch (InvalidOperationException)
        {
            // A key beside it has an escape that is no character.
            return null;
        }
    }

    public static JsonElement? Child(this JsonElement? element, string name) => element?.Child(name);

    /// <summary>A text; null when it is none or has bytes or escapes that are no characters.</summary>
    public static string? Text(this JsonElement? element)
    {
        if (element is not { ValueKind: JsonValueKind.String } text) return null;
        try
        {
            return text.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>A finite number; null when it is none.</summary>
    public static double? Number(this JsonElement? element) =>
        element is { ValueKind: JsonValueKind.Number } number && number.TryGetDouble(out var value) && double.IsFinite(value) ? value : null;

    /// <summary>The members of a list; none when it is no list.</summary>
    public static IEnumerable<JsonElement> Items(this JsonElement? element) =>
        element is { ValueKind: JsonValueKind.Array } list ? list.EnumerateArray() : [];
}
