namespace StormClock.Core.Formats.Feeds;

/// <summary>A list of messages as an office publishes it: Atom, RSS, or JSON.</summary>
/// <param name="Updated">When the list says it was last changed; null when it does not.</param>
public sealed record FeedIndex(string Title, Instant? Updated, IReadOnlyList<FeedEntry> Entries);

/// <summary>One entry of a list.</summary>
/// <param name="Id">Identity within the list; changes when the entry does, where the list says so.</param>
/// <param name="Message">The message itself where the list carries it whole, to be read like any other; empty otherwise. Mostly a part of the list's own bytes.</param>
/// <param name="Link">Where the message is; null when there is no link.</param>
/// <param name="Updated">When the entry was last changed; null when not told.</param>
public sealed record FeedEntry(string Id, string Title, ReadOnlyMemory<byte> Message, Uri? Link, Instant? Updated);
