using LiteDB;

namespace StormClock.Service.Store.Mapping;

/// <summary>
/// How single values stand in the database. Written by hand because the engine's own mapper loses what it does not
/// know without a word (an Instant comes back as 1970). Enums stand by name, so that reordering them changes nothing.
/// </summary>
internal static class Bson
{
    /// <summary>Whole ticks of 100 ns since 1970: exact for every clock used here, and sortable.</summary>
    public static BsonValue From(Instant instant) => instant.ToUnixTimeTicks();

    public static BsonValue From(Instant? instant) => instant is { } given ? From(given) : BsonValue.Null;

    public static BsonValue From<TEnum>(TEnum value)
        where TEnum : struct, Enum => Enum.GetName(value) ?? throw new ArgumentOutOfRangeException(nameof(value), value, "Not a named value.");

    public static BsonValue From(string? text) => text is null ? BsonValue.Null : new BsonValue(text);

    public static Instant ToInstant(BsonValue value) => Instant.FromUnixTimeTicks(value.AsInt64);

    public static Instant? ToInstantOrNull(BsonValue value) => value.IsNull ? null : ToInstant(value);

    public static TEnum ToEnum<TEnum>(BsonValue value)
        where TEnum : struct, Enum => Enum.Parse<TEnum>(value.AsString);

    public static string? ToTextOrNull(BsonValue value) => value.IsNull ? null : value.AsString;
}
