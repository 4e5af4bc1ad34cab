using LiteDB;
using StormClock.Core.Garden;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>What people last said about each job of an episode.</summary>
public static class JobStates
{
    /// <summary>Replaces what was said before about that job in that episode.</summary>
    public static void Put(StoreTransaction transaction, string gardenId, string episodeId, JobState state) =>
        transaction.Collection(Schema.JobStates).Upsert(JobStateMapping.ToBson(gardenId, episodeId, state));

    /// <summary>By job id.</summary>
    public static IReadOnlyList<JobState> OfEpisode(StoreReader reader, string gardenId, string episodeId) =>
        [.. reader.Collection(Schema.JobStates).Find(Query.EQ("episodeMark", JobStateMapping.EpisodeMarkOf(gardenId, episodeId)))
            .Select(JobStateMapping.FromBson).OrderBy(state => state.JobId, StringComparer.Ordinal)];
}
