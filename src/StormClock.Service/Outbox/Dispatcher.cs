using StormClock.Service.Delivery;
using StormClock.Service.Store;

namespace StormClock.Service.Outbox;

/// <param name="Released">Entries found claimed that nobody was sending.</param>
/// <param name="Settled">Every entry tried or expired in this run, as it stands now.</param>
public sealed record DispatchRun(IReadOnlyList<OutboxEntry> Released, IReadOnlyList<OutboxEntry> Settled);

/// <summary>
/// Sends what is due: claim, send, settle, each claim and each settlement durable before the next step. A crash at any
/// point leaves an entry that is sent again under the same Message-ID: at least once, in practice once, and never at or
/// after its <see cref="OutboxEntry.UsefulUntil"/>. There must be one dispatcher per store.
/// </summary>
public sealed class Dispatcher(StormStore store, IEnumerable<IChannel> channels, IClock clock) : IDisposable
{
    private readonly Dictionary<string, IChannel> channelsByName = channels.ToDictionary(channel => channel.Name);
    private readonly SemaphoreSlim oneRun = new(1);

    /// <summary>
    /// Sends everything due now, channels side by side, entries of one channel one after the other. Throws
    /// <see cref="StoreUnavailableException"/> when the store fails (nothing is sent that could not be claimed) and
    /// OperationCanceledException when cancelled; both leave every entry in a state that the next run takes up.
    /// </summary>
    public async Task<DispatchRun> RunAsync(CancellationToken cancellation)
    {
        await oneRun.WaitAsync(cancellation);
        try
        {
            var released = await ReleaseOrphansAsync(cancellation);
            var due = store.Read(reader => OutboxTable.Due(reader, clock.GetCurrentInstant()));
            var settled = await Task.WhenAll(due.GroupBy(entry => entry.Channel).Select(group => SendAllAsync([.. group], cancellation)));
            return new DispatchRun(released, [.. settled.SelectMany(entries => entries)]);
        }
        finally
        {
            oneRun.Release();
        }
    }

    public void Dispose() => oneRun.Dispose();

    /// <summary>Only one run is going on and it has claimed nothing yet, so whatever is claimed belongs to nobody.</summary>
    private async Task<IReadOnlyList<OutboxEntry>> ReleaseOrphansAsync(CancellationToken cancellation)
    {
        if (store.Read(reader => OutboxTable.InState(reader, OutboxState.Claimed)).Count == 0) return [];
        var now = clock.GetCurrentInstant();
        return await store.WriteAsync(
            transaction =>
            {
                var released = OutboxTable.InState(transaction, OutboxState.Claimed).Select(entry => Settlement.Release(entry, now)).ToList();
                foreach (var entry in released) OutboxTable.Update(transaction, entry);
                return released;
            },
            cancellation);
    }

    private async Task<IReadOnlyList<OutboxEntry>> SendAllAsync(IReadOnlyList<OutboxEntry> due, CancellationToken cancellation)
    {
        var settled = new List<OutboxEntry>();
        foreach (var entry in due)
        {
            cancellation.ThrowIfCancellationRequested();
            if (await ClaimAsync(entry.Id, cancellation) is not { } taken) continue;
            settled.Add(taken.State == OutboxState.Claimed ? await SendAsync(taken, cancellation) : taken);
        }

        return settled;
    }

    /// <summary>Looks at the entry again, since it may have been withdrawn or rewritten meanwhile; null when it is not to be touched.</summary>
    private Task<OutboxEntry?> ClaimAsync(string id, CancellationToken cancellation) => store.WriteAsync(
        transaction =>
        {
            var now = clock.GetCurrentInstant();
            if (OutboxTable.Find(transaction, id) is not { State: OutboxState.Waiting } entry) return null;
            var taken = OutboxTimes.HasPassed(entry, now) ? Settlement.Expire(entry, now) : Settlement.Claim(entry, now);
            if (taken is null) return null;
            OutboxTable.Update(transaction, taken);
            Enclosures.DropWhereDone(transaction, taken);
            return taken;
        },
        cancellation);

    private async Task<OutboxEntry> SendAsync(OutboxEntry claimed, CancellationToken cancellation)
    {
        // The claim may have waited for a slow disk.
        var now = clock.GetCurrentInstant();
        var settled = OutboxTimes.HasPassed(claimed, now)
            ? Settlement.Expire(claimed, now)
            : Settlement.Settle(claimed, await TryAsync(claimed, cancellation), clock.GetCurrentInstant());

        // What the other side said must be kept even when the host is stopping.
        await store.WriteAsync(
            transaction =>
            {
                OutboxTable.Update(transaction, settled);
                Enclosures.DropWhereDone(transaction, settled);
            },
            CancellationToken.None);
        return settled;
    }

    private async Task<DeliveryOutcome> TryAsync(OutboxEntry claimed, CancellationToken cancellation)
    {
        if (!channelsByName.TryGetValue(claimed.Channel, out var channel))
            return new DeliveryOutcome(DeliveryResult.TryAgain, $"the channel {claimed.Channel} is not set up");
        var message = claimed.Message with { Enclosures = store.Read(reader => Enclosures.Of(reader, claimed.Id)) };
        try
        {
            return await channel.SendAsync(message with { UsefulUntil = claimed.UsefulUntil, Urgent = claimed.Urgent }, cancellation);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            return new DeliveryOutcome(DeliveryResult.Unknown, "stopped while it was being sent");
        }
        catch (Exception e)
        {
            // A bug in a channel must not stop the other entries, and nobody knows what it had sent.
            return new DeliveryOutcome(DeliveryResult.Unknown, $"the channel failed: {e.GetType().Name}: {e.Message}");
        }
    }
}
