using System.Globalization;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>
/// What the gardener wrote of an item, but for name and jobs, as books and tables write it: in SI, nothing that is only
/// typical. The same words serve both.
/// </summary>
internal static class ItemText
{
    public static string? Value(Item item) => item.ValueTypical ? null : Number(item.ValueUsd);

    public static IReadOnlyList<(string Key, string? Value)> Build(ItemBuild written) =>
    [
        ("height", With(written.HeightM, "m")),
        ("width", With(written.WidthM, "m")),
        ("depth", With(written.DepthM, "m")),
        ("base", With(written.BaseM, "m")),
        ("mass", With(written.MassKg, "kg")),
        ("mass_wet", With(written.MassWetKg, "kg")),
        ("raised", With(written.RaisedM, "m")),
        ("standing", written.Standing is { } standing ? Tokens.Of(standing) : null),
        ("stands_on", written.Surface is { } surface ? Tokens.Of(surface) : null),
        ("drag", Number(written.Drag)),
        ("friction", Number(written.Friction)),
        ("solidity", Number(written.Solidity)),
        ("climbers", Number(written.ClimberCover)),
        ("holds", With(written.HoldsL, "l")),
        ("filled", Number(written.Filled)),
        ("catchment_m2", Number(written.CatchmentM2)),
        ("pot_height", With(written.PotHeightM, "m")),
        ("stem", With(written.StemM, "m")),
        ("crown_depth", With(written.CrownDepthM, "m")),
        ("years", Number(written.YearsInGround)),
        ("posts", Number(written.Posts)),
        ("post", With(written.PostM, "m")),
        ("post_depth", With(written.PostDeepM, "m")),
        ("tie", With(written.TieN, "N")),
        ("held_to", With(written.HeldToMps, "m/s")),
    ];

    public static IReadOnlyList<(string Key, string? Value)> Harvest(Harvest? harvest) => harvest is null
        ? []
        :
        [
            ("crop", harvest.Crop.Token),
            ("ripe", Number(harvest.Ripe)),
            ("mature", Number(harvest.Mature)),
            ("harvest_value", harvest.ValueTypical ? null : Number(harvest.ValueUsd)),
        ];

    /// <summary>The shortest digits that give the same number back.</summary>
    public static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    public static string? Number(double? number) => number is { } value ? Number(value) : null;

    public static string? With(double? number, string unit) => number is { } value ? $"{Number(value)} {unit}" : null;
}
