using LiteDB;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>Which things were looked at on a walk, and when. They belong to no storm.</summary>
public static class WalkMarks
{
    public static void Put(StoreTransaction transaction, string gardenId, string itemId, Instant at) =>
        transaction.Collection(Schema.WalkMarks).Upsert(new BsonDocument
        {
            ["_id"] = Fingerprint.Of(gardenId, itemId),
            ["gardenMark"] = Fingerprint.Of(gardenId),
            ["item"] = itemId,
            ["at"] = Bson.From(at),
        });

    /// <summary>When each thing was last looked at, by item id, since the walk before this one ended.</summary>
    public static IReadOnlyDictionary<string, Instant> OfWalk(StoreReader reader, string gardenId)
    {
        var began = Meta.Find(reader, EndKey(gardenId)) is { } text ? Instant.FromUnixTimeTicks(long.Parse(text, System.Globalization.CultureInfo.InvariantCulture)) : Instant.MinValue;
        return reader.Collection(Schema.WalkMarks).Find(Query.EQ("gardenMark", Fingerprint.Of(gardenId)))
            .Select(found => (Item: found["item"].AsString, At: Bson.ToInstant(found["at"])))
            .Where(mark => mark.At > began)
            .ToDictionary(mark => mark.Item, mark => mark.At);
    }

    /// <summary>The next walk begins with nothing looked at.</summary>
    public static void EndWalk(StoreTransaction transaction, string gardenId, Instant now) =>
        Meta.Put(transaction, EndKey(gardenId), now.ToUnixTimeTicks().ToString(System.Globalization.CultureInfo.InvariantCulture));

    private static string EndKey(string gardenId) => $"walkEnded|{gardenId}";
}
