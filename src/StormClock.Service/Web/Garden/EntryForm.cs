using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Web.Garden;

/// <summary>
/// An entry of a book as a form writes it: each field in the gardener's own words, such as "1.2 m" or "4 ft". It is put into the book's words and
/// read with the whole book, so that a page takes what a file may say, refuses what a file may not, and says it the same way.
/// </summary>
internal static class EntryForm
{
    /// <summary>Of a field, in characters; the reader has bounds of its own for what they mean.</summary>
    public const int Longest = 80;

    /// <summary>The book with that entry as the last of its list.</summary>
    /// <param name="before">The entry that is changed; null for a new one.</param>
    /// <param name="typed">By key of the book; empty takes a field out.</param>
    /// <param name="lists">By key of the book, what of a form is a list, its entries as a book writes them; empty takes it out.</param>
    public static ReadResult<GardenBook> Read(
        GardenBook others, string list, string id, WrittenMap? before, IReadOnlyDictionary<string, string> typed, IReadOnlyDictionary<string, IReadOnlyList<string>>? lists = null)
    {
        List<WrittenField> fields = before is null ? [new("id", Text(id))] : [.. before.Fields];
        var values = typed.Select(pair => (pair.Key, Value: pair.Value.Trim() is { Length: > 0 } value ? Text(value) : null))
            .Concat((lists ?? new Dictionary<string, IReadOnlyList<string>>()).Select(pair => (pair.Key, Value: pair.Value.Count > 0 ? new WrittenText($"[{string.Join(", ", pair.Value)}]") : null)));
        foreach (var (key, value) in values)
        {
            var at = fields.FindIndex(field => field.Key == key);
            if (at >= 0) fields.RemoveAt(at);
            if (value is not null) fields.Insert(at < 0 ? fields.Count : at, new(key, value));
        }

        var book = GardenWriter.Of(others);
        var entries = book[list] is WrittenList known ? known.Entries : [];
        var written = book with { Fields = [.. book.Fields.Where(field => field.Key != list), new(list, new WrittenList([.. entries, new WrittenMap(id, fields, Flow: false)]))] };
        return GardenReader.Read(WrittenForm.Entry(written, 0, "\n"), $"{others.Id}.yaml");
    }

    /// <summary>What a field of a form holds, on one line and not too long.</summary>
    public static string Line(string text) => (text.Length > Longest ? text[..Longest] : text).ReplaceLineEndings(" ").Trim();

    /// <summary>Always in quotes, so that no text can be taken for anything else.</summary>
    public static WrittenText Text(string text) => new($"\"{text.ReplaceLineEndings(" ").Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"");
}
