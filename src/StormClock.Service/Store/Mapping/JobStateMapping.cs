using LiteDB;
using StormClock.Core.Garden;

namespace StormClock.Service.Store.Mapping;

internal static class JobStateMapping
{
    public static string IdOf(string gardenId, string episodeId, string jobId) => Fingerprint.Of(gardenId, episodeId, jobId);

    public static string EpisodeMarkOf(string gardenId, string episodeId) => Fingerprint.Of(gardenId, episodeId);

    public static BsonDocument ToBson(string gardenId, string episodeId, JobState state) => new(Said(state).Concat(new BsonDocument
    {
        ["_id"] = IdOf(gardenId, episodeId, state.JobId),
        ["episodeMark"] = EpisodeMarkOf(gardenId, episodeId),
        ["garden"] = gardenId,
        ["episode"] = episodeId,
        ["job"] = state.JobId,
        ["before"] = state.Before is { } before ? Said(before) : BsonValue.Null,
    }).ToDictionary());

    public static JobState FromBson(BsonDocument document)
    {
        var job = document["job"].AsString;
        return Said(job, document) with { Before = document["before"] is BsonDocument before ? Said(job, before) : null };
    }

    private static BsonDocument Said(JobState state) => new()
    {
        ["progress"] = Bson.From(state.Progress),
        ["at"] = Bson.From(state.At),
        ["by"] = state.By,
        ["why"] = state.Why is { } why ? Bson.From(why) : BsonValue.Null,
    };

    private static JobState Said(string job, BsonDocument document) => new(
        job,
        Bson.ToEnum<JobProgress>(document["progress"]),
        Bson.ToInstant(document["at"]),
        document["by"].AsString,
        document["why"].IsNull ? null : Bson.ToEnum<CannotWhy>(document["why"]));
}
