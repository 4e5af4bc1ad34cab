using StormClock.Core.Garden;

namespace StormClock.Service.Books.Kinds;

/// <summary>Reads how one piece of a kind is usually made; the units stand in the keys.</summary>
internal static class TypicalBuild
{
    public static ItemBuild Of(YamlFields fields) => new()
    {
        HeightM = Figure(fields, "height_m", 40),
        WidthM = Figure(fields, "width_m", 40),
        DepthM = Figure(fields, "depth_m", 40),
        BaseM = Figure(fields, "base_m", 20),
        MassKg = Figure(fields, "mass_kg", 20_000),
        MassWetKg = Figure(fields, "mass_wet_kg", 20_000),
        RaisedM = Figure(fields, "raised_m", 20),
        Standing = fields.OptionalChoice("standing", Tokens.Standings),
        Surface = fields.OptionalChoice("surface", Tokens.Surfaces),
        Drag = Figure(fields, "drag", 3),
        Friction = Figure(fields, "friction", 2),
        Solidity = Figure(fields, "solidity", 1),
        ClimberCover = Figure(fields, "climber_cover", 1),
        HoldsL = Figure(fields, "holds_l", 20_000),
        Filled = Figure(fields, "filled", 1),
        PotHeightM = Figure(fields, "pot_height_m", 3),
        StemM = Figure(fields, "stem_m", 3),
        CrownDepthM = Figure(fields, "crown_depth_m", 40),
        YearsInGround = Figure(fields, "years_in_ground", 500),
        Posts = fields.OptionalWhole("posts", 1, 50, "2"),
        PostM = Figure(fields, "post_m", 1),
        PostDeepM = Figure(fields, "post_deep_m", 3),
        TieN = Figure(fields, "tie_n", 100_000),
        HeldToMps = Figure(fields, "held_to_mps", 100),
    };

    private static double? Figure(YamlFields fields, string key, double most) => fields.OptionalNumber(key, 0, most, "0.6");
}
