using LiteDB;
using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>The spells of hazard of each garden, past and present.</summary>
public static class Episodes
{
    public static void Put(StoreTransaction transaction, EpisodeRecord record) =>
        transaction.Collection(Schema.Episodes).Upsert(new BsonDocument
        {
            ["_id"] = Fingerprint.Of(record.GardenId, record.EpisodeId),
            ["gardenMark"] = Fingerprint.Of(record.GardenId),
            ["garden"] = record.GardenId,
            ["episode"] = record.EpisodeId,
            ["began"] = Bson.From(record.Began),
            ["highest"] = Bson.From(record.Highest),
            ["closed"] = Bson.From(record.Closed),
            ["stoodDown"] = Bson.From(record.StoodDown),
            ["ended"] = Bson.From(record.Ended),
            ["source"] = record.Source,
            ["gust10MMps"] = new BsonDocument(record.Gust10MMps.ToDictionary(site => site.Key, site => new BsonValue(site.Value))),
        });

    /// <summary>Newest first.</summary>
    public static IReadOnlyList<EpisodeRecord> OfGarden(StoreReader reader, string gardenId) =>
        [.. reader.Collection(Schema.Episodes).Find(Query.EQ("gardenMark", Fingerprint.Of(gardenId))).Select(FromBson).OrderByDescending(record => record.Began)];

    /// <summary>The last one; null when there was none.</summary>
    public static EpisodeRecord? Newest(StoreReader reader, string gardenId) => OfGarden(reader, gardenId) is [var newest, ..] ? newest : null;

    private static EpisodeRecord FromBson(BsonDocument found) => new(
        found["garden"].AsString, found["episode"].AsString, Bson.ToInstant(found["began"]), Bson.ToEnum<Stage>(found["highest"]), Bson.ToInstantOrNull(found["closed"]),
        Bson.ToInstantOrNull(found["stoodDown"]), Bson.ToInstantOrNull(found["ended"]), found["source"].AsString,
        found["gust10MMps"].AsDocument.ToDictionary(site => site.Key, site => site.Value.AsDouble));
}
