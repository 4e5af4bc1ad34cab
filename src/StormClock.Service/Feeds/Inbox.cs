using System.Collections.Concurrent;
using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Service.Desk;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Feeds.Signatures;
using StormClock.Service.Store;

namespace StormClock.Service.Feeds;

/// <summary>
/// Takes in what the feeds bring: each message is read, kept on the disk as it came, and only then believed. The ledger is
/// rebuilt from the disk at start, so a restart forgets nothing.
/// </summary>
public sealed class Inbox
{
    /// <summary>More are in the log only.</summary>
    private const int MostTroubles = 20;

    private readonly StormStore store;
    private readonly IClock clock;
    private readonly Journal journal;
    private readonly FeedWatch watch;
    private readonly GardenPlaces places;
    private readonly bool practice;
    private readonly ConcurrentDictionary<string, string> troubles = new();

    /// <param name="practice">A rehearsal: exercise alerts count as if they were actual, which they never do otherwise.</param>
    public Inbox(StormStore store, IClock clock, Journal journal, FeedWatch watch, GardenPlaces places, bool practice)
    {
        this.places = places;
        this.practice = practice;
        this.store = store;
        this.watch = watch;
        this.clock = clock;
        this.journal = journal;
        foreach (var heard in store.Read(Store.Advisories.All))
        {
            foreach (var advisory in MessageReader.ReadAll(heard.Raw).Value ?? []) Believe(advisory, heard.HeardAt);
        }
    }

    /// <summary>What could not be read or had since it was last well, newest last.</summary>
    public IReadOnlyCollection<string> Troubles => [.. troubles.Select(trouble => $"{trouble.Key}: {trouble.Value}")];

    /// <summary>Everything heard so far.</summary>
    public AdvisoryLedger Ledger { get; private set; } = AdvisoryLedger.Empty;

    /// <summary>Takes in what a round of looks brought. Trouble at one feed never keeps another from being heard.</summary>
    public async Task TakeInAsync(IReadOnlyList<(IFeed Feed, FeedAnswer Answer)> heard, CancellationToken cancellation)
    {
        foreach (var (feed, answer) in heard)
        {
            if (answer.Trouble is { } trouble) Trouble(feed.Name, trouble);
            else troubles.TryRemove(feed.Name, out _);
            var (understood, newest) = (0, default(Instant?));
            string? unread = null;
            foreach (var message in answer.Messages)
            {
                var read = Read(feed, message);
                foreach (var advisory in read.Value ?? [])
                {
                    understood++;
                    if (newest is null || advisory.Issued > newest) newest = advisory.Issued;
                }

                if (!read.IsGood) unread = $"{message.Name}: {string.Join("; ", read.Faults)}";
                await HearAsync(feed, message, read, cancellation);
                await feed.TookAsync(message, read.IsGood, cancellation);
            }

            watch.Note(feed, answer, understood, newest, unread, clock.GetCurrentInstant());
        }

        await watch.SaveAsync(cancellation);
    }

    /// <summary>A signature is checked last and only for what may be kept: it costs more than reading.</summary>
    private ReadResult<IReadOnlyList<Advisory>> Read(IFeed feed, RawMessage message)
    {
        var read = MessageReader.ReadAll(message.Bytes);
        if (read.Value is not { } advisories || (feed.IsWide && !advisories.Any(places.MayConcern))) return read;
        if (feed.Signers is { } signers) return signers.FaultOf(message.Bytes) is { } fault ? new ReadFault("signature", $"the message {fault}; it was not taken", 1) : read;
        if (FeedSigners.IsSigned(message.Bytes.Span)) watch.NoteUnchecked(feed.Name);
        return read;
    }

    private async Task HearAsync(IFeed feed, RawMessage message, ReadResult<IReadOnlyList<Advisory>> read, CancellationToken cancellation)
    {
        if (read.Value is not { } advisories)
        {
            Trouble($"{feed.Name}, {message.Name}", string.Join("; ", read.Faults));
            return;
        }

        troubles.TryRemove($"{feed.Name}, {message.Name}", out _);
        foreach (var advisory in advisories.Where(one => !feed.IsWide || places.MayConcern(one))) await KeepAsync(feed.Name, message, advisory, cancellation);
    }

    private async Task KeepAsync(string source, RawMessage message, Advisory advisory, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var heard = new Store.HeardAdvisory(advisory.Id, message.Bytes.ToArray(), advisory.GetType().Name, advisory.Issued, now, source);
        if (!await store.WriteAsync(transaction => Store.Advisories.Add(transaction, heard), cancellation)) return;
        Believe(advisory, now);
        journal.Write(new(now, "advisory", Subject: advisory.Title, Key: advisory.Id));
        if (advisory is CycloneAdvisory { Mends: { Count: > 0 } mends }) Trouble($"{source}, {message.Name}", $"used after mending: {string.Join("; ", mends)}");
    }

    private void Believe(Advisory advisory, Instant heardAt)
    {
        if (practice && advisory is AlertMessage { Status: AlertStatus.Exercise } exercise) advisory = exercise with { Status = AlertStatus.Actual };
        Ledger = Ledger.With(advisory, heardAt);
    }

    private void Trouble(string where, string what)
    {
        if (troubles.Count < MostTroubles) troubles[where] = what;
        journal.Write(new(clock.GetCurrentInstant(), "trouble", Reason: what, Subject: where));
    }
}
