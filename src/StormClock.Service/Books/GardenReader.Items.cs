using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>Items, their jobs, and materials.</summary>
public sealed partial class GardenReader
{
    private List<Item> Items(YamlFields top)
    {
        var items = new List<Item>();
        foreach (var fields in top.Maps("items", "item", GardenKeys.Item, "- {id: fig-pots, kind: potted_tree, area: porch, count: 3}", required: true))
        {
            items.Add(Item(fields));
            Once(itemLines, items[^1].Id, fields, "item");
        }

        return items;
    }

    private Item Item(YamlFields fields)
    {
        var id = fields.Id("id", "fig-pots");
        var kind = Kind(fields);
        var known = ItemKinds.All.GetValueOrDefault(kind);
        var written = new ItemBuild { MassKg = fields.Amount("mass", QuantityKind.Mass, 0, 20_000) };
        var item = new Item(
            id,
            fields.OptionalText("name", "Figs in pots") ?? Named(id),
            kind,
            fields.Text("area", "porch"),
            fields.Whole("count", 1, 100_000, null, "3"),
            fields.Number("value", 0, 10_000_000, JobDefaults.UnstatedValue, "120"),
            [.. fields.Words("endangers", "[neighbour_window]").Select(word => word.Text)],
            [])
        {
            Shape = known?.Shape ?? default,
            Written = written,
            Build = known is null ? written : written.Or(known.Typical),
        };
        references.Add((fields.LineOf("area"), fields.Subject, "area", item.AreaId));
        return item with { Jobs = Jobs(fields, item) };
    }

    private static string Kind(YamlFields fields)
    {
        var kind = fields.Text("kind", "potted_tree");
        if (kind.Length > 0 && !ItemKinds.All.ContainsKey(kind))
            fields.Fault("kind", $"is '{YamlFields.Shown(kind)}', which is not known; {Nearest.Hint(kind, [.. ItemKinds.All.Keys])}");
        return kind;
    }

    private List<Job> Jobs(YamlFields itemFields, Item item)
    {
        var jobs = new List<Job>();
        foreach (var fields in itemFields.Maps("jobs", $"job of {itemFields.Subject}", GardenKeys.Job, "- {kind: tie, minutes: 20}"))
        {
            var kind = JobKind(fields);
            jobs.Add(Job(fields, item, kind, JobId(item.Id, kind, jobs)));
            jobLines.TryAdd(jobs[^1].Id, fields);
        }

        return jobs;
    }

    private static JobKind JobKind(YamlFields fields)
    {
        if (fields.OptionalText("kind", "tie") is { } written && Tokens.UndoKinds.ContainsKey(written))
        {
            fields.Fault("kind", $"is '{written}', which is done after the storm; write it as 'undo' of the job that it undoes");
            return default;
        }

        return fields.Choice<JobKind>("kind", Tokens.JobKinds, null);
    }

    /// <summary><c>item-id/kind</c>, with -2, -3 for a repeat of the same kind.</summary>
    private static string JobId(string itemId, JobKind kind, List<Job> before)
    {
        var repeats = before.Count(job => job.Kind == kind);
        return repeats == 0 ? $"{itemId}/{Tokens.Of(kind)}" : $"{itemId}/{Tokens.Of(kind)}-{repeats + 1}";
    }

    private Job Job(YamlFields fields, Item item, JobKind kind, string id)
    {
        var traits = ItemKinds.All.GetValueOrDefault(item.Kind)?.Traits ?? default;
        var store = fields.Map("store", "store", GardenKeys.JobStore, "{id: shed, floor_m2: 1.5}");
        if (store is not null) references.Add((store.LineOf("id"), fields.Subject, "store", store.Text("id", "shed")));
        return new Job(
            id,
            item.Id,
            kind,
            fields.Whole("minutes", 1, 1440, null, "20"),
            fields.Whole("people", 1, 2, 1, "1"),
            fields.Choice<WorkClass>("class", Tokens.Classes, JobDefaults.ClassOf(kind, traits)),
            After(fields, item.Id),
            fields.Number("value", 0, 10_000_000, item.ValueUsd, "120"),
            Hazard(item),
            [.. fields.Maps("materials", "material", GardenKeys.Material, "- {material: rope, quantity: 8, unit: m}").Select(Need)],
            store?.OptionalText("id", "shed"),
            store?.Number("floor_m2", 0, 1000, 0, "1.5") ?? 0,
            store?.Number("volume_m3", 0, 1000, 0, "0.8") ?? 0,
            fields.OptionalText("fallback", "lay them down in the lee of the wall"),
            Undo(fields, kind),
            fields.Flag("last_round", JobDefaults.LastRoundOf(kind, traits)));
    }

    /// <summary>A thing worth little can still break a window: it weighs at least as one without a stated value.</summary>
    private static double Hazard(Item item) =>
        item.Endangers.Count == 0 ? 0 : JobDefaults.HazardFactor * Math.Max(item.ValueUsd, JobDefaults.UnstatedValue);

    /// <summary>Job ids; a bare kind means the same item's job of that kind.</summary>
    private List<string> After(YamlFields fields, string itemId)
    {
        var after = new List<string>();
        foreach (var word in fields.Words("after", "[fig-pots/tie]"))
        {
            var id = word.Text.Contains('/') ? word.Text : $"{itemId}/{word.Text}";
            after.Add(id);
            references.Add((word.Line, fields.Subject, "job", id));
        }

        return after;
    }

    private static JobKind? Undo(YamlFields fields, JobKind kind)
    {
        if (!fields.Has("undo")) return JobDefaults.UndoOf(kind);
        if (fields.OptionalText("undo", "untie") is "none") return null;

        return fields.Choice<JobKind>("undo", Tokens.UndoKinds, Core.Garden.JobKind.Check);
    }

    private MaterialNeed Need(YamlFields fields)
    {
        var (material, quantity, unit) = Measured(fields);
        return new MaterialNeed(material, quantity, unit);
    }

    /// <summary>
    /// <c>quantity: 8, unit: m</c> or <c>quantity: 25 ft</c>. Lengths are stored in m, masses in kg, volumes in l; one
    /// material must be counted in one of these throughout.
    /// </summary>
    private (string Material, double Quantity, string Unit) Measured(YamlFields fields)
    {
        var material = fields.Text("material", "rope");
        if (Counted(fields) is not { } counted) return (material, 0, "each");

        var (number, written) = counted;
        if (!MaterialUnits.All.TryGetValue(written, out var unit))
        {
            fields.Fault(fields.Has("unit") ? "unit" : "quantity", $"has the unit '{YamlFields.Shown(written)}', which is not known; {Nearest.Hint(written, [.. MaterialUnits.All.Keys])}");
            return (material, number, "each");
        }

        if (!materialUnits.TryAdd(material, (unit.Stored, fields.Line)) && materialUnits[material] is var first && first.Unit != unit.Stored)
            fields.Fault(fields.Has("unit") ? "unit" : "material", $"counts it in {unit.Stored}, but line {first.Line} counts it in {first.Unit}; use one of them for both");
        return (material, number * unit.Factor, unit.Stored);
    }

    /// <summary>Null when the fault is told.</summary>
    private static (double Number, string Unit)? Counted(YamlFields fields)
    {
        const double most = 1_000_000;
        var text = fields.Text("quantity", "8");
        var apart = fields.OptionalText("unit", "m") is { Length: > 0 } unit ? unit : null;
        if (text.Length == 0) return null;

        if (Quantity.Split(text) is not { } pair || pair.Number is < 0 or > most)
            fields.Fault("quantity", $"must be a number from 0 to {most}, with a unit or without, not '{YamlFields.Shown(text)}'; write e.g. quantity: 25 ft");
        else if (pair.Unit.Length > 0 && apart is not null)
            fields.Fault("unit", "is given twice, here and in 'quantity'; keep one");
        else
            return (pair.Number, pair.Unit.Length > 0 ? pair.Unit : apart ?? "each");

        return null;
    }

    /// <summary>"fig-pots" reads "Fig pots".</summary>
    private static string Named(string id) => id.Length == 0 ? "" : char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');
}
