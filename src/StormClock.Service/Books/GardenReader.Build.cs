using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>How one piece of an item is made and how it stands. The bounds are wide: they catch slips of the pen, no more (C).</summary>
public sealed partial class GardenReader
{
    private const double ThinnestM = 0.001;

    private ItemBuild Written(YamlFields fields) => new()
    {
        HeightM = Length(fields, "height", ThinnestM, 60),
        WidthM = Length(fields, "width", ThinnestM, 60),
        DepthM = Length(fields, "depth", ThinnestM, 60),
        BaseM = Length(fields, "base", ThinnestM, 20),
        MassKg = fields.Amount("mass", QuantityKind.Mass, 0, 20_000),
        MassWetKg = fields.Amount("mass_wet", QuantityKind.Mass, 0, 20_000),
        RaisedM = Length(fields, "raised", 0, 60),
        Standing = fields.OptionalChoice("standing", Tokens.Standings),
        Surface = fields.OptionalChoice("stands_on", Tokens.Surfaces),
        Drag = fields.OptionalNumber("drag", 0.05, 3, "0.8"),
        Friction = fields.OptionalNumber("friction", 0.05, 2, "0.5"),
        Solidity = Share(fields, "solidity"),
        ClimberCover = Share(fields, "climbers"),
        HoldsL = fields.Amount("holds", QuantityKind.Volume, 0.1, 1_000_000),
        Filled = Share(fields, "filled"),
        CatchmentM2 = fields.OptionalNumber("catchment_m2", 0.1, 100_000, "45"),
        PotHeightM = Length(fields, "pot_height", ThinnestM, 5),
        StemM = Length(fields, "stem", ThinnestM, 5),
        CrownDepthM = Length(fields, "crown_depth", ThinnestM, 60),
        YearsInGround = fields.OptionalNumber("years", 0, 1000, "4"),
        Posts = fields.OptionalWhole("posts", 1, 100, "2"),
        PostM = Length(fields, "post", ThinnestM, 1),
        PostDeepM = Length(fields, "post_depth", 0, 5),
        TieN = fields.Amount("tie", QuantityKind.Force, 0, 1_000_000),
        HeldToMps = fields.Amount("held_to", QuantityKind.WindSpeed, 1, 120, "gust"),
    };

    /// <summary>0 to 1, or a percentage.</summary>
    private static double? Share(YamlFields fields, string key) => fields.Amount(key, QuantityKind.Share, 0, 1);

    /// <summary>
    /// The typical figures but for those that what is written makes impossible, such as a pot higher than the whole plant. The
    /// gardener is not asked to mend what she did not write.
    /// </summary>
    private static ItemBuild Fitting(ItemBuild typical, ItemBuild written) => typical with
    {
        MassKg = typical.MassKg > written.MassWetKg ? null : typical.MassKg,
        MassWetKg = typical.MassWetKg < written.MassKg ? null : typical.MassWetKg,
        HeightM = typical.HeightM < written.PotHeightM ? null : typical.HeightM,
        PotHeightM = typical.PotHeightM > written.HeightM ? null : typical.PotHeightM,
    };

    private static void CheckBuild(YamlFields fields, Item item)
    {
        var (written, build) = (item.Written, item.Build);
        if (written.MassWetKg < written.MassKg)
            fields.Fault("mass_wet", "is less than 'mass'; a soaked thing is at least as heavy as a dry one");
        if (written.HeightM < written.PotHeightM)
            fields.Fault("height", "is less than 'pot_height'; height is that of the whole, pot and crown");
        if (written.Filled is not null && build.HoldsL is null && !fields.Has("holds"))
            fields.Fault("filled", "cannot be used without what it holds when full; add holds: 60 l");
        if (written.Posts is not null && build is { Standing: Standing.OnPosts, PostDeepM: null } && !fields.Has("post_depth"))
            fields.Fault("posts", "cannot be used without how deep they stand; add post_depth: 2 ft");
    }
}
