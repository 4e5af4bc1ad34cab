using System.Text.Json;
using NodaTime.Serialization.SystemTextJson;

namespace StormClock.Service.Calendars;

/// <summary>One job of one person as it stands in that person's calendar.</summary>
/// <param name="Uid">The same for the garden, episode, person and job, whatever else changes.</param>
/// <param name="Summary">What is to be done, as in letters; names nobody.</param>
/// <param name="Location">Site and area.</param>
/// <param name="StartBy">Latest start.</param>
/// <param name="Sequence">One higher with every change of anything above or of <paramref name="TakenBack"/> (RFC 5545 3.8.7.4).</param>
/// <param name="ChangedAt">When the sequence last rose.</param>
/// <param name="TakenBack">Done, or no longer planned.</param>
/// <param name="Told">A letter has carried it, so a letter must take it back.</param>
public sealed record CalendarEvent(
    string Uid,
    string PersonId,
    string JobId,
    string Summary,
    string Location,
    Instant Start,
    Instant End,
    Instant StartBy,
    int Sequence,
    Instant ChangedAt,
    bool TakenBack = false,
    bool Told = false);

/// <summary>What the calendars of a garden's people say in one episode; remembered, so that a restart goes on counting.</summary>
/// <param name="EpisodeId">Null between episodes, when there are no events.</param>
public sealed record GardenCalendar(string? EpisodeId, IReadOnlyList<CalendarEvent> Events)
{
    private static readonly JsonSerializerOptions Json = new JsonSerializerOptions().ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public static GardenCalendar Empty { get; } = new(null, []);

    public IReadOnlyList<CalendarEvent> Of(string personId) => [.. Events.Where(told => told.PersonId == personId)];

    public string ToJson() => JsonSerializer.Serialize(this, Json);

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    public static GardenCalendar FromJson(string json) =>
        JsonSerializer.Deserialize<GardenCalendar>(json, Json) ?? throw new JsonException("An empty calendar was stored.");
}
