using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>What can be picked from an item.</summary>
public sealed partial class GardenReader
{
    /// <summary>Shares written in percent may miss the whole by what arithmetic adds.</summary>
    private const double Whole = 1 + 1e-9;

    private static readonly string[] HarvestKeys = ["ripe", "mature", "harvest_value"];

    private static Harvest? Harvest(YamlFields fields, Item item)
    {
        var ripe = Share(fields, "ripe");
        var mature = Share(fields, "mature");
        var value = fields.OptionalNumber("harvest_value", 0, 10_000_000, "60");
        if (ripe + mature > Whole) fields.Fault("mature", "and 'ripe' are more than the whole crop together; what is ripe does not count as mature too");

        if (!fields.Has("crop"))
        {
            foreach (var key in HarvestKeys.Where(fields.Has)) fields.Fault(key, "belongs to a crop; add e.g. crop: tomato");
            return null;
        }

        if (!fields.Has("ripe") && !fields.Has("mature")) fields.Fault("crop", "needs what there is to pick; add ripe: 30 % and mature: 40 %, as of the last walk");
        return Crop(fields) is { } crop ? new Harvest(crop, value ?? item.ValueUsd, ripe ?? 0, mature ?? 0) { ValueTypical = value is null } : null;
    }

    private static Crop? Crop(YamlFields fields)
    {
        var token = fields.Text("crop", "tomato");
        if (token.Length == 0 || Crops.All.TryGetValue(token, out var crop)) return Crops.All.GetValueOrDefault(token);

        fields.Fault("crop", $"is '{YamlFields.Shown(token)}', which is not known; {Nearest.Hint(token, [.. Crops.All.Keys])}");
        return null;
    }
}
