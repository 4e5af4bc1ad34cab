using StormClock.Service.Delivery;

namespace StormClock.Service.Outbox;

public enum OutboxState
{
    /// <summary>Waiting for its moment or its next try.</summary>
    Waiting,

    /// <summary>A dispatcher is sending it; after a crash it goes back to waiting.</summary>
    Claimed,

    Sent,

    /// <summary>The other side will never take it.</summary>
    Refused,

    /// <summary>Its time of use passed before it could be sent.</summary>
    Expired,

    /// <summary>No longer wanted before it was sent.</summary>
    Withdrawn,
}

/// <summary>One message to be delivered at least once, in practice once, within its time of use.</summary>
/// <param name="Id">Made from the reminder key, so that the same wish never makes two entries.</param>
/// <param name="Key">The reminder key as text.</param>
/// <param name="Cause">Id of the advisory or note that the message rests on.</param>
/// <param name="NextTry">Not sent before this.</param>
/// <param name="Detail">Last word of the other side.</param>
public sealed record OutboxEntry(
    string Id,
    string Key,
    string Channel,
    string GardenId,
    string PersonId,
    string Reason,
    string Cause,
    IReadOnlyList<string> JobIds,
    Outgoing Message,
    Instant Written,
    Instant Moment,
    Instant UsefulUntil,
    bool Urgent,
    OutboxState State,
    int Attempts,
    Instant NextTry,
    Instant? Settled,
    string? Detail)
{
    /// <summary>Second part of the reminder key; no garden id holds the bar between them.</summary>
    public string EpisodeId => Key.Split('|', 3)[1];
}
