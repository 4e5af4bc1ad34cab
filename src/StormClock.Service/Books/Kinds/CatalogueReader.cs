using System.Text.RegularExpressions;
using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Kinds;

/// <summary>Reads the catalogue of kinds and crops, as strictly as a garden book: all faults at once, each with its line.</summary>
internal sealed partial class CatalogueReader
{
    private readonly FaultList faults = new();
    private readonly Dictionary<string, string> materialUnits = [];

    public static ReadResult<Catalogue> Read(string yamlText) => new CatalogueReader().Whole(yamlText);

    private ReadResult<Catalogue> Whole(string yamlText)
    {
        if (YamlTreeReader.Read(yamlText, faults) is not { } tree) return ReadResult.Bad<Catalogue>(faults.InOrder());

        var top = new YamlFields(tree, "the catalogue", CatalogueKeys.File, faults);
        Materials(top);
        var catalogue = new Catalogue(
            Named(top, "kinds", "kind", CatalogueKeys.Kind, "{drum: {words: drum, shape: body}}", Kind),
            Named(top, "crops", "crop", CatalogueKeys.Crop, "{fig: {words: fig, ripens_off: false}}", Crop));
        return faults.Any ? ReadResult.Bad<Catalogue>(faults.InOrder()) : catalogue;
    }

    /// <summary>What jobs may ask for, and the unit it is counted in throughout.</summary>
    private void Materials(YamlFields top)
    {
        if (top.OpenMap("materials", "the materials", "{rope: m}") is not { } fields) return;

        foreach (var name in fields.Keys)
        {
            var unit = fields.Text(name, "each");
            if (MaterialUnits.All.TryGetValue(unit, out var known) && known.Stored == unit) materialUnits[name] = unit;
            else fields.Fault(name, $"is counted in '{YamlFields.Shown(unit)}', which is no unit that materials are stored in; {Nearest.Hint(unit, StoredUnits)}");
        }
    }

    private static string[] StoredUnits => [.. MaterialUnits.All.Values.Select(unit => unit.Stored).Distinct()];

    private static Dictionary<string, T> Named<T>(YamlFields top, string key, string noun, string[] known, string example, Func<string, YamlFields, T> read)
    {
        var named = new Dictionary<string, T>();
        if (top.Required(key, example) is null || top.OpenMap(key, $"the {key}", example) is not { } entries) return named;

        foreach (var token in entries.Keys)
        {
            if (!TokenShape().IsMatch(token)) entries.Fault(token, "must be made of lower-case letters and underscores");
            if (entries.RequiredMap(token, $"{noun} '{token}'", known, "{words: drum}") is { } fields) named[token] = read(token, fields);
        }

        return named;
    }

    private ItemKind Kind(string token, YamlFields fields)
    {
        var shape = fields.Choice<ItemShape>("shape", KindTokens.Shapes, null);
        var typical = fields.Map("typical", $"typical build of kind '{token}'", CatalogueKeys.Typical, "{height_m: 0.9}") is { } build ? TypicalBuild.Of(build) : ItemBuild.Unknown;
        foreach (var missing in ShapeNeeds.Missing(shape, typical))
            fields.Fault(fields.Has("typical") ? "typical" : "shape", $"lacks {missing}, which the shape '{Tokens.Of(shape)}' needs");

        return new ItemKind(
            token, fields.Text("words", "drum"), Traits(fields), shape, fields.Number("value_each_usd", 0, 100_000, null, "40"), typical, Jobs(token, fields))
        {
            Caution = fields.OptionalText("caution", "the owner decides"),
        };
    }

    private static ItemTraits Traits(YamlFields fields)
    {
        var traits = ItemTraits.None;
        foreach (var word in fields.Words("traits", "[heavy]"))
        {
            if (KindTokens.Traits.TryGetValue(word.Text, out var trait)) traits |= trait;
            else fields.FaultAt(word.Line, "traits", $"has '{YamlFields.Shown(word.Text)}', which is not known; {Nearest.Hint(word.Text, [.. KindTokens.Traits.Keys])}");
        }

        return traits;
    }

    private static Crop Crop(string token, YamlFields fields) => new(
        token,
        fields.Text("words", "fig"),
        fields.Required("ripens_off", "false") is not null && fields.Flag("ripens_off", false),
        fields.Number("keeps_days", 0, 400, null, "7"),
        fields.Number("sheds_at_mps", 1, 100, null, "18"));

    [GeneratedRegex("^[a-z]+(_[a-z]+)*$")]
    private static partial Regex TokenShape();
}
