using LiteDB;
using NodaTime.Text;
using StormClock.Service.Store.Mapping;
using StormClock.Service.Visits;

namespace StormClock.Service.Store;

/// <summary>A key by which another program asks in somebody's name.</summary>
/// <param name="Id">Fingerprint of the key; opens nothing.</param>
/// <param name="Name">What it is for, in its owner's words.</param>
/// <param name="Owner">In whose name.</param>
/// <param name="LastUsed">UTC date; null when it was not used yet.</param>
public sealed record ApiKey(string Id, string Name, Visitor Owner, Instant Made, LocalDate? LastUsed)
{
    /// <summary>Tells the passcode it was made under from others (<see cref="PasscodeFile.Mark"/>); null where its owner is known by mail.</summary>
    public string? PasscodeMark { get; init; }

    /// <summary>A key dies with the passcode it was made under, as visits do.</summary>
    /// <param name="mark">Of the passcode that holds now; null when none does.</param>
    public bool HoldsUnder(string? mark) => Owner.Kind != VisitorKind.Passcode || PasscodeMark == mark;
}

/// <summary>Keys of other programs. Only their fingerprints are kept: the database opens nothing.</summary>
public static class ApiKeys
{
    private static readonly LocalDatePattern Date = LocalDatePattern.Iso;

    public static void Put(StoreTransaction transaction, ApiKey key) =>
        transaction.Collection(Schema.ApiKeys).Upsert(new BsonDocument
        {
            ["_id"] = key.Id,
            ["name"] = key.Name,
            ["kind"] = Bson.From(key.Owner.Kind),
            ["email"] = Bson.From(key.Owner.Email),
            ["passcode"] = Bson.From(key.PasscodeMark),
            ["made"] = Bson.From(key.Made),
            ["lastUsed"] = key.LastUsed is { } used ? new BsonValue(Date.Format(used)) : BsonValue.Null,
        });

    /// <summary>Null when it was taken back or never was.</summary>
    public static ApiKey? Find(StoreReader reader, string id) => reader.Collection(Schema.ApiKeys).FindById(id) is { } found ? FromBson(found) : null;

    /// <summary>Of everybody, oldest first.</summary>
    public static IReadOnlyList<ApiKey> All(StoreReader reader) => [.. reader.Collection(Schema.ApiKeys).FindAll().Select(FromBson).OrderBy(key => key.Made)];

    public static void Drop(StoreTransaction transaction, string id) => transaction.Collection(Schema.ApiKeys).Delete(id);

    private static ApiKey FromBson(BsonDocument found) => new(
        found["_id"].AsString, found["name"].AsString, new(Bson.ToEnum<VisitorKind>(found["kind"]), Bson.ToTextOrNull(found["email"])), Bson.ToInstant(found["made"]),
        Bson.ToTextOrNull(found["lastUsed"]) is { } used ? Date.Parse(used).Value : null)
    {
        PasscodeMark = Bson.ToTextOrNull(found["passcode"]),
    };
}
