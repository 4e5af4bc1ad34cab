using LiteDB;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>What looks after the wind found: the last word on each thing in each episode.</summary>
public static class Outcomes
{
    public static void Put(StoreTransaction transaction, string gardenId, string episodeId, Outcome outcome) =>
        transaction.Collection(Schema.Outcomes).Upsert(new BsonDocument
        {
            ["_id"] = Fingerprint.Of(gardenId, episodeId, outcome.ItemId),
            ["gardenMark"] = Fingerprint.Of(gardenId),
            ["episode"] = episodeId,
            ["item"] = outcome.ItemId,
            ["kind"] = Bson.From(outcome.Kind),
            ["at"] = Bson.From(outcome.At),
            ["by"] = outcome.By,
            ["note"] = outcome.Note,
            ["done"] = new BsonArray(outcome.Done.Select(kind => Bson.From(kind))),
            ["gust10MMps"] = outcome.Gust10MMps is { } gust ? new BsonValue(gust) : BsonValue.Null,
        });

    /// <summary>By episode, oldest first.</summary>
    public static IReadOnlyList<(string EpisodeId, Outcome Outcome)> OfGarden(StoreReader reader, string gardenId) =>
        [.. reader.Collection(Schema.Outcomes).Find(Query.EQ("gardenMark", Fingerprint.Of(gardenId)))
            .Select(found => (EpisodeId: found["episode"].AsString, Outcome: FromBson(found)))
            .OrderBy(found => found.Outcome.At).ThenBy(found => found.Outcome.ItemId, StringComparer.Ordinal)];

    private static Outcome FromBson(BsonDocument found) => new(
        found["item"].AsString, Bson.ToEnum<OutcomeKind>(found["kind"]), Bson.ToInstant(found["at"]), found["by"].AsString, found["note"].AsString,
        [.. found["done"].AsArray.Select(Bson.ToEnum<JobKind>)], found["gust10MMps"].IsNull ? null : found["gust10MMps"].AsDouble);
}
