namespace StormClock.Service.Books;

/// <summary>Every key a garden book may have, by the mapping it stands in; the schema for editors names the same.</summary>
internal static class GardenKeys
{
    public static readonly string[] Book = ["garden", "people", "sites", "areas", "stores", "supplies", "limits", "items"];

    public static readonly string[] Garden = ["id", "name", "zone", "units", "practice"];

    public static readonly string[] Person = ["id", "name", "email", "role", "hours", "days_off", "lift_kg", "ladder_alone"];

    public static readonly string[] Hours = ["days", "date", "from", "to"];

    public static readonly string[] Site = ["id", "name", "latitude", "longitude", "terrain", "travel_minutes", "codes"];

    public static readonly string[] Area = ["id", "name", "site", "exposure"];

    public static readonly string[] Store = ["id", "name", "site", "floor_m2", "volume_m3"];

    public static readonly string[] Material = ["material", "quantity", "unit"];

    public static readonly string[] Limit = ["sustained", "gust"];

    public static readonly string[] Item = ["id", "name", "kind", "area", "count", "mass", "value", "endangers", "jobs"];

    public static readonly string[] Job =
        ["kind", "minutes", "people", "class", "after", "value", "materials", "store", "fallback", "undo", "last_round"];

    public static readonly string[] JobStore = ["id", "floor_m2", "volume_m3"];
}
