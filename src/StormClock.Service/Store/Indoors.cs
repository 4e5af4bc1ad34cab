using LiteDB;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>When each person of an episode last said "I am in".</summary>
public static class Indoors
{
    /// <summary>Replaces what that person said before in that episode.</summary>
    public static void Put(StoreTransaction transaction, string gardenId, string episodeId, string personId, Instant at) =>
        transaction.Collection(Schema.Indoors).Upsert(new BsonDocument
        {
            ["_id"] = Fingerprint.Of(gardenId, episodeId, personId),
            ["episodeMark"] = JobStateMapping.EpisodeMarkOf(gardenId, episodeId),
            ["garden"] = gardenId,
            ["episode"] = episodeId,
            ["person"] = personId,
            ["at"] = Bson.From(at),
        });

    /// <summary>By person id.</summary>
    public static IReadOnlyDictionary<string, Instant> OfEpisode(StoreReader reader, string gardenId, string episodeId) =>
        reader.Collection(Schema.Indoors).Find(Query.EQ("episodeMark", JobStateMapping.EpisodeMarkOf(gardenId, episodeId)))
            .ToDictionary(document => document["person"].AsString, document => Bson.ToInstant(document["at"]));
}
