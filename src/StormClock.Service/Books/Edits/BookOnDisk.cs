using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>What the file of a book, and the table beside it where it names one, held at one moment.</summary>
internal sealed class BookOnDisk
{
    private readonly string path;
    private readonly Dictionary<string, ReadResult<string>> tables = [];

    private BookOnDisk(string path, ReadResult<string> text)
    {
        this.path = path;
        Text = text.Value ?? "";
        Book = text.Value is null ? ReadResult.Bad<GardenBook>(text.Faults) : GardenReader.Read(text.Value, path, Beside);
    }

    /// <summary>Empty where the file could not be read; the faults are those of <see cref="Book"/>.</summary>
    public string Text { get; }

    public ReadResult<GardenBook> Book { get; }

    public static BookOnDisk Read(string path) => new(path, TextFile.Read(path));

    /// <summary>The table as it was when the book was read, so that one moment holds for all of it.</summary>
    public ReadResult<string> Beside(string name) =>
        tables.TryGetValue(name, out var read) ? read : tables[name] = TableNow(name);

    /// <summary>Nobody has written either file since.</summary>
    public bool IsStill() => TextFile.Read(path).Value == Text && tables.All(table => TableNow(table.Key).Value == table.Value.Value);

    private ReadResult<string> TableNow(string name) => TextFile.Read(Path.Combine(Path.GetDirectoryName(path) ?? "", name));
}
