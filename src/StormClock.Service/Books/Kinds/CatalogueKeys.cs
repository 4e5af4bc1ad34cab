namespace StormClock.Service.Books.Kinds;

/// <summary>Every key that may stand in the catalogue.</summary>
internal static class CatalogueKeys
{
    public static readonly string[] File = ["materials", "kinds", "crops"];
    public static readonly string[] Kind = ["words", "traits", "shape", "value_each_usd", "caution", "typical", "jobs"];
    public static readonly string[] Job = ["kind", "minutes", "minutes_each", "people", "class", "after", "materials", "part_kg", "caution", "fallback"];
    public static readonly string[] Crop = ["words", "ripens_off", "keeps_days", "sheds_at_mps"];

    public static readonly string[] Typical =
    [
        "height_m", "width_m", "depth_m", "base_m", "mass_kg", "mass_wet_kg", "raised_m", "standing", "surface", "drag", "friction", "solidity",
        "climber_cover", "holds_l", "filled", "pot_height_m", "stem_m", "crown_depth_m", "years_in_ground", "posts", "post_m", "post_deep_m",
        "tie_n", "held_to_mps",
    ];
}
