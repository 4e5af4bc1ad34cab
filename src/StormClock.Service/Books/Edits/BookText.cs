using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>
/// Changes the text of a garden book so that remarks, order, units and layout stay wherever nothing changed. Each text is read
/// before it is given back: it is good only when it says exactly what is wanted.
/// </summary>
public static class BookText
{
    private const char ByteOrderMark = '\uFEFF';

    /// <summary>
    /// What was left out of one entry may follow from another, as the way back from a site does. Such an entry shows only when
    /// the text is read, and is changed then.
    /// </summary>
    private const int MostTurns = 3;

    /// <param name="text">The file as it is.</param>
    /// <param name="fileName">Gives the garden its id where the text has none.</param>
    /// <param name="book">The book read from <paramref name="text"/>.</param>
    /// <param name="wanted">The book that the new text must say. Rows of a table beside the file stay behind the entries of the file.</param>
    /// <param name="beside">Gives the text of a file beside the book, by its name; null where the book is no file.</param>
    /// <returns>The faults, none with a line, where the wanted book would not be read again.</returns>
    public static ReadResult<BookRewrite> Rewrite(string text, string fileName, GardenBook book, GardenBook wanted, Func<string, ReadResult<string>>? beside = null)
    {
        var body = text.TrimStart(ByteOrderMark);
        var whole = GardenWriter.Write(InOrderOf(body, book, wanted));
        var goal = GardenReader.Read(whole, fileName);
        if (goal.Value is null) return ReadResult.Bad<BookRewrite>([.. goal.Faults.Select(fault => new ReadFault("the book as changed", fault.Reason))]);

        GardenBook? Proof(string candidate) => GardenReader.Read(candidate, fileName, beside).Value;
        var kept = Kept(body, book, goal.Value, Proof, fine: true) ?? Kept(body, book, goal.Value, Proof, fine: false);
        return kept is null ? new BookRewrite.Whole(whole, goal.Value) : kept with { Text = text[..^body.Length] + kept.Text };
    }

    private static BookRewrite.Kept? Kept(string text, GardenBook book, GardenBook goal, Func<string, GardenBook?> proof, bool fine)
    {
        var (wanted, taken) = (GardenWriter.Of(goal), false);
        for (var turn = 0; turn < MostTurns; turn++)
        {
            if (WrittenForm.Same(GardenWriter.Of(book), wanted)) return new(text, book, taken);
            if (YamlTreeReader.Read(text, new FaultList()) is not { } top) return null;
            if (BookSurgery.Cut(text, top, GardenWriter.Of(book), wanted, fine) is not { Any: true } edits) return null;
            if (edits.Made() is not { } made || proof(made) is not { } read) return null;

            (text, book, taken) = (made, read, taken || edits.TakesRemarks);
        }

        return WrittenForm.Same(GardenWriter.Of(book), wanted) ? new(text, book, taken) : null;
    }

    /// <summary>New items come before those of the table, where the file has its own.</summary>
    private static GardenBook InOrderOf(string text, GardenBook book, GardenBook wanted)
    {
        var top = YamlTreeReader.Read(text, new FaultList());
        if (top?.Entries.Any(entry => entry.Key == "items_file") != true) return wanted;

        var inText = top.Entries.FirstOrDefault(entry => entry.Key == "items")?.Value is YamlList list ? list.Entries.Count : 0;
        var rows = book.Items.Skip(inText).Select(item => item.Id).ToHashSet();
        return wanted with { Items = [.. wanted.Items.Where(item => !rows.Contains(item.Id)), .. wanted.Items.Where(item => rows.Contains(item.Id))] };
    }
}
