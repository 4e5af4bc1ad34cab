namespace StormClock.Service.Delivery;

/// <summary>How one attempt to deliver ended.</summary>
public enum DeliveryResult
{
    /// <summary>The other side took it.</summary>
    Delivered,

    /// <summary>Not taken, may be taken later.</summary>
    TryAgain,

    /// <summary>Not taken and never will be.</summary>
    Refused,

    /// <summary>It may or may not have been taken: the answer was lost after the content went out.</summary>
    Unknown,
}

/// <param name="Detail">What the other side said, for the keeper; no secrets.</param>
/// <param name="After">How long to wait before the next try, where the other side said so.</param>
public sealed record DeliveryOutcome(DeliveryResult Result, string Detail, Duration? After = null);

/// <summary>A finished message for one person on one channel. Sending it again sends the same bytes under the same id.</summary>
/// <param name="EntryId">Id of the outbox entry.</param>
/// <param name="MessageId">Fixed Message-ID without angle brackets, made from the entry id.</param>
/// <param name="ThreadId">Message-ID-like name of the episode, so that mail programs keep a storm together.</param>
/// <param name="Dated">When the message was written; its Date header, the same on every try.</param>
public sealed record Outgoing(
    string EntryId,
    string MessageId,
    string ThreadId,
    string ToName,
    string ToAddress,
    string Subject,
    string Text,
    string Html,
    Instant Dated)
{
    /// <summary>Of its words, as BCP 47 names it.</summary>
    public string Language { get; init; } = "en";

    /// <summary>What goes with it, where the channel can carry that.</summary>
    public IReadOnlyList<Enclosure> Enclosures { get; init; } = [];

    /// <summary>Nobody is to be bothered with it from then on; set as it goes out, since the time of use may move until then.</summary>
    public Instant? UsefulUntil { get; init; }

    /// <summary>Passes quiet hours; set as it goes out.</summary>
    public bool Urgent { get; init; }
}

/// <summary>A file that goes with a message.</summary>
/// <param name="MediaType">With its parameters, e.g. <c>text/calendar; method=PUBLISH</c>.</param>
public sealed record Enclosure(string FileName, string MediaType, ReadOnlyMemory<byte> Bytes);

/// <summary>A way to reach a person. One instance serves one channel; it is called by one dispatcher at a time.</summary>
public interface IChannel
{
    /// <summary>Name used in reminder keys, e.g. <c>email</c>; what follows a colon there says whom or what the channel reaches.</summary>
    string Name { get; }

    Task<DeliveryOutcome> SendAsync(Outgoing message, CancellationToken cancellation);

    /// <summary>Nothing more is to be sent for now: whatever was kept open from one message to the next is closed. Never fails.</summary>
    Task RestAsync() => Task.CompletedTask;
}
