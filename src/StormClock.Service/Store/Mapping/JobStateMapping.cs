using LiteDB;
using StormClock.Core.Garden;

namespace StormClock.Service.Store.Mapping;

internal static class JobStateMapping
{
    public static string IdOf(string gardenId, string episodeId, string jobId) => Fingerprint.Of(gardenId, episodeId, jobId);

    public static string EpisodeMarkOf(string gardenId, string episodeId) => Fingerprint.Of(gardenId, episodeId);

    public static BsonDocument ToBson(string gardenId, string episodeId, JobState state) => new()
    {
        ["_id"] = IdOf(gardenId, episodeId, state.JobId),
        ["episodeMark"] = EpisodeMarkOf(gardenId, episodeId),
        ["garden"] = gardenId,
        ["episode"] = episodeId,
        ["job"] = state.JobId,
        ["progress"] = Bson.From(state.Progress),
        ["at"] = Bson.From(state.At),
        ["by"] = state.By,
        ["why"] = Bson.From(state.Why),
    };

    public static JobState FromBson(BsonDocument document) => new(
        document["job"].AsString,
        Bson.ToEnum<JobProgress>(document["progress"]),
        Bson.ToInstant(document["at"]),
        document["by"].AsString,
        Bson.ToTextOrNull(document["why"]));
}
