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

    /// <param name="fileName">Gives the garden its id when the book has none; the faults name lines only.</param>
    public static ReadResult<GardenBook> Read(string yamlText, string fileName) => new GardenReader().Book(yamlText, fileName);

    private ReadResult<GardenBook> Book(string yamlText, string fileName)
    {
        if (YamlTreeReader.Read(yamlText, faults) is not { } tree) return ReadResult.Bad<GardenBook>(faults.InOrder());

        var top = new YamlFields(tree, "the garden book", GardenKeys.Book, faults);
        var book = Gather(top, fileName);
        Check(book);
        return faults.Any ? ReadResult.Bad<GardenBook>(faults.InOrder()) : book;
    }

    private GardenBook Gather(YamlFields top, string fileName)
    {
        var garden = top.RequiredMap("garden", "garden", GardenKeys.Garden, "{id: home, name: Home, zone: America/New_York, units: us}");
        var book = new GardenBook(
            GardenId(garden, fileName),
            garden?.Text("name", "Home garden") ?? "",
            garden?.Zone("zone") ?? DateTimeZone.Utc,
            garden?.Choice<UnitSystem>("units", Tokens.Units, null) ?? default,
            garden?.Flag("practice", false) ?? false,
            People(top), Sites(top), Areas(top), [], Supplies(top), Stores(top), Limits(top));
        return book with { Items = Items(top) };
    }

    private static string GardenId(YamlFields? garden, string fileName)
    {
        var stem = Path.GetFileNameWithoutExtension(fileName);
        return garden is not null && !garden.Has("id") && YamlFields.IsId(stem) ? stem : garden?.Id("id", "home") ?? "";
    }
}
