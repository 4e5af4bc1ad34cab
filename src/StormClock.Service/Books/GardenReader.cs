using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>
/// Reads a garden book. Every fault comes at once, each with its line and the mend; a book with any fault is refused
/// whole. Quantities may be written in the gardener's units; the book holds SI.
/// </summary>
public sealed partial class GardenReader
{
    private readonly FaultList faults = new();
    private FaultList tableFaults = new();
    private readonly IReadOnlyDictionary<string, ItemKind> kinds;
    private readonly Func<string, ReadResult<string>>? beside;
    private QuantityKind lengths = QuantityKind.Length;

    private GardenReader(Func<string, ReadResult<string>>? beside, IReadOnlyDictionary<string, ItemKind> kinds)
    {
        this.beside = beside;
        this.kinds = kinds;
    }

    /// <param name="fileName">Gives the garden its id when the book has none; the faults name lines only.</param>
    /// <param name="beside">Gives the text of a file beside the book, by its name; null where the book is no file.</param>
    public static ReadResult<GardenBook> Read(string yamlText, string fileName, Func<string, ReadResult<string>>? beside = null) =>
        Read(yamlText, fileName, beside, ItemKinds.All);

    /// <param name="kinds">The catalogue to read by.</param>
    internal static ReadResult<GardenBook> Read(string yamlText, string fileName, Func<string, ReadResult<string>>? beside, IReadOnlyDictionary<string, ItemKind> kinds) =>
        new GardenReader(beside, kinds).Book(yamlText, fileName);

    private ReadResult<GardenBook> Book(string yamlText, string fileName)
    {
        if (YamlTreeReader.Read(yamlText, faults) is not { } tree) return ReadResult.Bad<GardenBook>(faults.InOrder());

        var top = new YamlFields(tree, "the garden book", GardenKeys.Book, faults);
        var book = Gather(top, fileName);
        Check(book);
        faults.AddAll(tableFaults.InOrder());
        return faults.Any ? ReadResult.Bad<GardenBook>(faults.InOrder()) : book;
    }

    private GardenBook Gather(YamlFields top, string fileName)
    {
        var garden = top.RequiredMap("garden", "garden", GardenKeys.Garden, "{id: home, name: Home, zone: America/New_York, units: us}");
        lengths = Metric(garden) ? QuantityKind.MetricLength : QuantityKind.Length;
        var book = new GardenBook(
            GardenId(garden, fileName),
            garden?.Text("name", "Home garden") ?? "",
            garden?.Zone("zone") ?? DateTimeZone.Utc,
            garden?.Choice<UnitSystem>("units", Tokens.Units, null) ?? default,
            garden?.Flag("practice", false) ?? false,
            People(top), Sites(top), Areas(top), [], Supplies(top), Stores(top), Limits(top));
        return book with { Surveyed = garden?.Date("surveyed"), ShoppingHours = garden?.Number("shopping_hours", 0, 240, GardenBook.UsualShoppingHours, "3") ?? GardenBook.UsualShoppingHours, Items = Items(top) };
    }

    /// <summary>A book that does not say its units has that fault told once, not again at each length.</summary>
    private static bool Metric(YamlFields? garden) =>
        garden?.Peek("units") is not { } written || !Tokens.Units.TryGetValue(written, out var units) || units != UnitSystem.UsCustomary;

    private double? Length(YamlFields fields, string key, double leastM, double mostM) => fields.Amount(key, lengths, leastM, mostM);

    private static string GardenId(YamlFields? garden, string fileName)
    {
        var stem = Path.GetFileNameWithoutExtension(fileName);
        return garden is not null && !garden.Has("id") && YamlFields.IsId(stem) ? stem : garden?.Id("id", "home") ?? "";
    }
}
