using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Web.Garden;

/// <summary>
/// An item as a form writes it: each field in the gardener's own words, such as "1.2 m" or "4 ft". It is put into the book's words and read
/// with the whole book, so that a page takes what a file may say, refuses what a file may not, and says it the same way.
/// </summary>
internal static class ItemForm
{
    /// <summary>What a page offers, in its order; more stands in the file.</summary>
    public static IReadOnlyList<string> Fields { get; } =
        ["count", "standing", "stands_on", "height", "width", "depth", "mass", "raised", "held_to", "value"];

    /// <summary>Of a field, in characters; the reader has bounds of its own for what they mean.</summary>
    public const int Longest = 80;

    /// <param name="before">The item that is changed; null for a new one.</param>
    /// <param name="typed">By key of the book; empty takes a field out.</param>
    public static ReadResult<Item> Read(GardenBook book, Item? before, string id, IReadOnlyDictionary<string, string> typed)
    {
        List<WrittenField> fields = before is null ? [new("id", Text(id))] : [.. GardenWriter.Of(before).Fields];
        foreach (var (key, value) in typed)
        {
            var at = fields.FindIndex(field => field.Key == key);
            if (at >= 0) fields.RemoveAt(at);
            if (value.Trim().Length > 0) fields.Insert(at < 0 ? fields.Count : at, new(key, Text(value.Trim())));
        }

        var others = GardenWriter.Of(book with { Items = [.. book.Items.Where(item => item.Id != id)] });
        var items = others["items"] is WrittenList list ? list.Entries : [];
        var written = others with { Fields = [.. others.Fields.Where(field => field.Key != "items"), new("items", new WrittenList([.. items, new WrittenMap(id, fields, Flow: false)]))] };
        var read = GardenReader.Read(WrittenForm.Entry(written, 0, "\n"), $"{book.Id}.yaml");
        return read.Value is { } good ? good.Items[^1] : ReadResult.Bad<Item>(read.Faults);
    }

    /// <summary>What the gardener wrote of an item, by key.</summary>
    public static IReadOnlyDictionary<string, string> Of(Item item) =>
        ItemText.Build(item.Written).Append(("value", ItemText.Value(item))).Append(("count", ItemText.Number(item.Count)))
            .Where(pair => pair.Item2 is not null).ToDictionary(pair => pair.Item1, pair => pair.Item2!);

    /// <summary>Always in quotes, so that no text can be taken for anything else.</summary>
    private static WrittenText Text(string text) => new($"\"{text.ReplaceLineEndings(" ").Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"");
}
