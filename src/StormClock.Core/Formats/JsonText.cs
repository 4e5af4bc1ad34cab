using System.Text;
using System.Text.Json;

namespace StormClock.Core.Formats;

/// <summary>Small helps for reading JSON of others, where any value may be missing or of another kind.</summary>
internal static class JsonText
{
    /// <summary>The bytes after the mark of UTF-8 that some servers put first.</summary>
    public static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> bytes) => bytes[MarkLength(bytes)..];

    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) => bytes[MarkLength(bytes.Span)..];

    /// <summary>By the first byte; whether it is a sound one only reading tells.</summary>
    public static bool IsObject(ReadOnlySpan<byte> bytes) => WithoutMark(bytes).TrimStart(" \t\r\n"u8) is [(byte)'{', ..];

    /// <summary>The member of an object; null when there is none, or this is no object.</summary>
    public static JsonElement? Member(this JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) ? value : null;

    /// <summary>The text of a member, trimmed; "" when it is no text.</summary>
    public static string Text(this JsonElement element, string name) => element.Member(name)?.OwnText() ?? "";

    public static string OwnText(this JsonElement element) =>
        element.ValueKind == JsonValueKind.String ? element.GetString()!.Trim() : "";

    /// <summary>The values of a member that is an array; none when it is not.</summary>
    public static IEnumerable<JsonElement> Items(this JsonElement element, string name) =>
        element.Member(name) is { ValueKind: JsonValueKind.Array } array ? array.EnumerateArray() : [];

    /// <summary>Whether reading failed on what the bytes hold: JSON that is broken, or a text in it that stands for no letters (half of a pair).</summary>
    public static bool IsFaultOfBytes(Exception error) => error is JsonException or InvalidOperationException;

    public static ReadFault FaultOf(Exception error) => error is JsonException json
        ? ReadFault.At((int)Math.Min((json.LineNumber ?? 0) + 1, int.MaxValue), "the JSON is broken off or not well-formed")
        : ReadFault.At(1, $"a text in the JSON cannot be decoded: {error.Message}");

    private static int MarkLength(ReadOnlySpan<byte> bytes) => bytes.StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
}
