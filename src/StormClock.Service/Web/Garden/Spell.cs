using StormClock.Core.Garden;
using StormClock.Core.Recheck;

namespace StormClock.Service.Web.Garden;

/// <summary>A past or present storm as its page tells it.</summary>
/// <param name="InTime">Jobs done before the garden closed, or at all where it did not.</param>
/// <param name="After">Jobs said to be done only after it had closed.</param>
/// <param name="Open">Jobs of which something else was said last.</param>
/// <param name="Counts">How many things came to each outcome.</param>
public sealed record Spell(EpisodeRecord Record, int InTime, int After, int Open, IReadOnlyDictionary<OutcomeKind, int> Counts)
{
    public static Spell Of(EpisodeRecord record, IReadOnlyList<JobState> states, IReadOnlyList<(string EpisodeId, Outcome Outcome)> outcomes)
    {
        var jobs = states.Where(state => !state.JobId.Contains(':', StringComparison.Ordinal)).ToList();
        var done = jobs.Where(state => state.Progress == JobProgress.Done).ToList();
        return new(
            record,
            done.Count(state => record.Closed is null || state.At < record.Closed),
            done.Count(state => state.At >= record.Closed),
            jobs.Count - done.Count,
            outcomes.Where(found => found.EpisodeId == record.EpisodeId).GroupBy(found => found.Outcome.Kind).ToDictionary(group => group.Key, group => group.Count()));
    }
}
