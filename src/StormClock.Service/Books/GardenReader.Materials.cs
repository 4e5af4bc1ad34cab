using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>What is at hand and what jobs need.</summary>
public sealed partial class GardenReader
{
    private List<Supply> Supplies(YamlFields top)
    {
        var supplies = new List<Supply>();
        foreach (var fields in top.Maps("supplies", "supply", GardenKeys.Material, "- {material: rope, quantity: 30, unit: m}"))
        {
            var (material, quantity, unit) = Measured(fields);
            supplies.Add(new Supply(material, quantity, unit));
            Once(supplyFields, material, fields, "supply");
        }

        return supplies;
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
            fields.Fault("quantity", Quantity.HasComma(YamlFields.Shown(text)) ?? $"must be a number from 0 to {most}, with a unit or without, not '{YamlFields.Shown(text)}'; write e.g. quantity: 25 ft");
        else if (pair.Unit.Length > 0 && apart is not null)
            fields.Fault("unit", "is given twice, here and in 'quantity'; keep one");
        else
            return (pair.Number, pair.Unit.Length > 0 ? pair.Unit : apart ?? "each");

        return null;
    }
}
