using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Service.Calendars;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Desk;

/// <summary>What the store knows of a garden when a decision is made.</summary>
internal sealed record Remembered(
    GardenStanding Standing,
    string? Json,
    long Revision,
    IReadOnlyDictionary<string, JobState> Jobs,
    IReadOnlyDictionary<string, Instant> SaidIn,
    OutboxStock Outbox,
    GardenCalendar Calendar,
    EpisodeRecord? Episode)
{
    public static Remembered Of(StoreReader reader, string gardenId, Instant now)
    {
        var text = Standings.Find(reader, gardenId);
        var standing = text is null ? GardenStanding.Calm(now) : StandingJson.Read(text.Json);
        var episode = standing.Stage.EpisodeId;
        var jobs = episode is null ? [] : JobStates.OfEpisode(reader, gardenId, episode);
        return new(
            standing,
            text?.Json,
            text?.Revision ?? 0,
            jobs.ToDictionary(job => job.JobId),
            episode is null ? new Dictionary<string, Instant>() : Indoors.OfEpisode(reader, gardenId, episode),
            OutboxTable.StockOf(reader, gardenId),
            KeptCalendars.Find(reader, gardenId) is { } calendar ? GardenCalendar.FromJson(calendar) : GardenCalendar.Empty,
            Episodes.Newest(reader, gardenId));
    }
}
