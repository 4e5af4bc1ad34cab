using StormClock.Core.Garden;
using StormClock.Service.Books.Csv;

namespace StormClock.Service.Books;

/// <summary>Items, written in the book or in a table beside it.</summary>
public sealed partial class GardenReader
{
    private List<Item> Items(YamlFields top)
    {
        var items = new List<Item>();
        foreach (var fields in top.Maps("items", "item", GardenKeys.Item, "- {id: fig-pots, kind: potted_tree, area: porch, count: 3}", required: !top.Has("items_file")).Concat(Rows(top)))
        {
            items.Add(Item(fields));
            Once(itemFields, items[^1].Id, fields, "item");
        }

        return items;
    }

    /// <summary>The rows of the table that the book names, each read as an item; its faults carry the table's name.</summary>
    private IEnumerable<YamlFields> Rows(YamlFields top)
    {
        if (ItemsFile(top) is not { } name) return [];
        if (beside is null)
        {
            top.Fault("items_file", "can only be read where the book is a file; write the items out under 'items'");
            return [];
        }

        var text = beside(name);
        if (text.Value is null)
        {
            faults.AddAll(text.Faults.Select(fault => fault with { File = name }));
            return [];
        }

        tableFaults = new FaultList(name);
        return [.. ItemTable.Read(text.Value, tableFaults).Select(row => new YamlFields(row, "item", GardenKeys.Item, tableFaults))];
    }

    /// <summary>A name and no path, so that a book cannot reach for files elsewhere.</summary>
    private static string? ItemsFile(YamlFields top)
    {
        if (top.OptionalText("items_file", "plants.csv") is not { Length: > 0 } name) return null;
        if (name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && name.IndexOfAny(['/', '\\', ':']) < 0) return name;

        top.Fault("items_file", $"must be the name of a .csv file beside the book, without a folder, not '{YamlFields.Shown(name)}'; write e.g. items_file: plants.csv");
        return null;
    }

    private Item Item(YamlFields fields)
    {
        var id = fields.Id("id", "fig-pots");
        var kind = Kind(fields);
        var known = kinds.GetValueOrDefault(kind);
        var written = Written(fields);
        var count = fields.Whole("count", 1, 100_000, null, "3");
        var value = fields.OptionalNumber("value", 0, 10_000_000, "120");
        var item = new Item(
            id,
            fields.OptionalText("name", "Figs in pots") ?? Named(id),
            kind,
            fields.Text("area", "porch"),
            count,
            value ?? TypicalValue(known, count),
            [.. fields.Words("endangers", "[neighbour_window]").Select(word => word.Text)],
            [])
        {
            Shape = known?.Shape ?? default,
            Written = written,
            Build = known is null ? written : written.Or(Fitting(known.Typical, written)),
            ValueTypical = value is null,
            Caution = known?.Caution,
            Spot = Spot(fields),
        };
        CheckBuild(fields, item);
        references.Add(new(fields, fields.LineOf("area"), "area", item.AreaId));
        item = item with { Harvest = Harvest(fields, item) };
        return WithJobs(fields, item);
    }

    private string Kind(YamlFields fields)
    {
        var kind = fields.Text("kind", "potted_tree");
        if (kind.Length > 0 && !kinds.ContainsKey(kind))
            fields.Fault("kind", $"is '{YamlFields.Shown(kind)}', which is not known; {Nearest.Hint(kind, [.. kinds.Keys])}");
        return kind;
    }

    private static double TypicalValue(ItemKind? kind, int count) =>
        kind is { ValueEachUsd: > 0 } ? kind.ValueEachUsd * count : JobDefaults.UnstatedValueUsd;

    /// <summary>"fig-pots" reads "Fig pots".</summary>
    private static string Named(string id) => id.Length == 0 ? "" : char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');
}
