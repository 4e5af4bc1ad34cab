using StormClock.Core.Stages;
using StormClock.Core.Worth;

namespace StormClock.Core.Recheck;

/// <summary>What is kept of a spell of hazard once it is over, gathered while it lasts.</summary>
/// <param name="Highest">Highest stage but Recheck.</param>
/// <param name="Closed">When the garden closed; null when it never did.</param>
/// <param name="StoodDown">When the forecast turned away; null when it did not.</param>
/// <param name="Ended">When the last recheck was over, or it was stood down; null while it lasts.</param>
/// <param name="Source">Name of what the highest stage rested on.</param>
/// <param name="Gust10MMps">Middle of the forecast's peak gusts, the last word before the garden closed, by site id; m/s at 10 m in the open.</param>
public sealed record EpisodeRecord(
    string GardenId, string EpisodeId, Instant Began, Stage Highest, Instant? Closed, Instant? StoodDown, Instant? Ended, string Source, IReadOnlyDictionary<string, double> Gust10MMps)
{
    /// <summary>Peaks that differ by less are told alike, m/s.</summary>
    private const double Step = 0.5;

    /// <summary>The record after a decision; the same instance when nothing of it changed, null while there is no spell.</summary>
    /// <param name="forecast">Peak gusts by site id.</param>
    public static EpisodeRecord? Next(EpisodeRecord? known, string gardenId, StageStanding stage, IReadOnlyDictionary<string, PeakGusts> forecast, Instant now)
    {
        if (stage.EpisodeId is not { } episode) return known is null || known.Ended is not null ? known : known with { Ended = now };
        var record = known is { } same && same.EpisodeId == episode ? same : new(gardenId, episode, now, stage.Stage, null, null, null, stage.Reason.Source, new Dictionary<string, double>());
        if (stage.Stage != Stage.Recheck && stage.Stage > record.Highest) record = record with { Highest = stage.Stage, Source = stage.Reason.Source };
        if (stage.Stage == Stage.GardenClosed && record.Closed is null) record = record with { Closed = stage.Since };
        if (stage.StoodDown != record.StoodDown) record = record with { StoodDown = stage.StoodDown };
        return record.Closed is null && Peaks(forecast) is { Count: > 0 } peaks && Differ(peaks, record.Gust10MMps) ? record with { Gust10MMps = peaks } : record;
    }

    private static Dictionary<string, double> Peaks(IReadOnlyDictionary<string, PeakGusts> forecast) =>
        forecast.Where(site => site.Value.At10MMps.Count > 0).ToDictionary(site => site.Key, site => site.Value.MiddleMps);

    private static bool Differ(Dictionary<string, double> peaks, IReadOnlyDictionary<string, double> known) =>
        peaks.Count != known.Count || peaks.Any(site => !known.TryGetValue(site.Key, out var before) || Math.Abs(before - site.Value) >= Step);
}
