namespace StormClock.Service.Books;

/// <summary>Every key a garden book may have, by the mapping it stands in; the schema for editors names the same.</summary>
internal static class GardenKeys
{
    public static readonly string[] Book = ["garden", "people", "sites", "areas", "stores", "supplies", "limits", "items", "items_file"];

    public static readonly string[] Garden = ["id", "name", "zone", "units", "practice", "surveyed", "shopping_hours", "language", "clock"];

    public static readonly string[] Person = ["id", "name", "email", "second", "role", "hours", "days_off", "lift_kg", "ladder", "ladder_alone", "language", "clock", "units"];

    public static readonly string[] Hours = ["days", "date", "from", "to"];

    public static readonly string[] Site = ["id", "name", "latitude", "longitude", "terrain", "travel_minutes", "codes", "datum", "ground"];

    public static readonly string[] Area = ["id", "name", "site", "exposure", "ground", "water", "neighbour", "glass", "plot"];

    public static readonly string[] Store = ["id", "name", "site", "floor_m2", "volume_m3", "door", "raised"];

    public static readonly string[] Material = ["material", "quantity", "unit"];

    public static readonly string[] Limit = ["sustained", "gust"];

    /// <summary>In the order of the table's columns.</summary>
    public static readonly string[] Item =
    [
        "id", "name", "kind", "area", "count", "value",
        "height", "width", "depth", "base", "mass", "mass_wet", "raised", "standing", "stands_on", "drag", "friction", "solidity", "climbers",
        "holds", "filled", "catchment_m2", "pot_height", "stem", "crown_depth", "years", "posts", "post", "post_depth", "tie", "held_to",
        "crop", "ripe", "mature", "harvest_value", "spot", "endangers", "jobs",
    ];

    public static readonly string[] Job =
        ["kind", "minutes", "people", "class", "after", "value", "materials", "part_kg", "store", "fallback", "undo", "last_round", "caution"];

    public static readonly string[] JobStore = ["id", "floor_m2", "volume_m3"];
}
