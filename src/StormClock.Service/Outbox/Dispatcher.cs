using StormClock.Service.Delivery;
using StormClock.Service.Store;

namespace StormClock.Service.Outbox;

/// <param name="Released">Entries found claimed that nobody was sending.</param>
/// <param name="Settled">Every entry tried or expired in this run, as it stands now.</param>
public sealed record DispatchRun(IReadOnlyList<OutboxEntry> Released, IReadOnlyList<OutboxEntry> Settled);

/// <summary>
/// Sends what is due: claim, send, settle, each claim and each settlement durable before the next step. A crash at any
/// point leaves entries that are sent again under the same Message-ID: at least once, in practice once, and never at or
/// after their <see cref="OutboxEntry.UsefulUntil"/>. There must be one dispatcher per store.
/// </summary>
/// <remarks>
/// The transaction that settles one group claims the next, so a crash repeats no more of a channel than the answered letters
/// of the group at hand. A group is one entry, and only in a heap a hundredth of what is due, 16 at most.
/// </remarks>
public sealed class Dispatcher(StormStore store, IEnumerable<IChannel> channels, IClock clock) : IDisposable
{
    private const int LargestGroup = 16;

    /// <summary>Up to twice as many due entries go out one by one.</summary>
    private const int DuePerGroupEntry = 100;

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
            // Only their names: a heap of letters is read group by group.
            var due = store.Read(reader => OutboxTable.Due(reader, clock.GetCurrentInstant()).Select(entry => (entry.Id, entry.Channel)).ToList());
            var settled = await Task.WhenAll(due.GroupBy(entry => entry.Channel, entry => entry.Id).Select(channel => SendAllAsync(channel.Key, [.. channel], cancellation)));
            cancellation.ThrowIfCancellationRequested();
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

    private async Task<IReadOnlyList<OutboxEntry>> SendAllAsync(string channel, IReadOnlyList<string> due, CancellationToken cancellation)
    {
        var all = new List<OutboxEntry>();
        try
        {
            IReadOnlyList<OutboxEntry> tried = [];
            foreach (var ids in due.Chunk(Math.Clamp(due.Count / DuePerGroupEntry, 1, LargestGroup)))
            {
                if (cancellation.IsCancellationRequested) break;
                var taken = await SettleAndClaimAsync(tried, ids);
                tried = await SendGroupAsync([.. taken.Where(entry => entry.State == OutboxState.Claimed)], cancellation);
                all.AddRange(taken.Where(entry => entry.State != OutboxState.Claimed));
                all.AddRange(tried);
            }

            await SettleAndClaimAsync(tried, []);
        }
        finally
        {
            if (channelsByName.TryGetValue(channel, out var used)) await used.RestAsync();
        }

        return all;
    }

    /// <summary>
    /// Writes down how the last group ended and claims the next, looking at its entries again, since they may have been
    /// withdrawn or rewritten meanwhile. What the other side said must be kept even when the host is stopping.
    /// </summary>
    /// <returns>The next entries as they stand now, claimed or expired; without those that are not to be touched.</returns>
    private Task<List<OutboxEntry>> SettleAndClaimAsync(IReadOnlyList<OutboxEntry> settled, string[] next) =>
        settled.Count == 0 && next.Length == 0 ? Task.FromResult<List<OutboxEntry>>([]) : store.WriteAsync(
            transaction =>
            {
                foreach (var entry in settled) Put(transaction, entry);
                var now = clock.GetCurrentInstant();
                var taken = next.Select(id => OutboxTable.Find(transaction, id)).OfType<OutboxEntry>()
                    .Where(entry => entry.State == OutboxState.Waiting)
                    .Select(entry => OutboxTimes.HasPassed(entry, now) ? Settlement.Expire(entry, now) : Settlement.Claim(entry, now))
                    .OfType<OutboxEntry>().ToList();
                foreach (var entry in taken) Put(transaction, entry);
                return taken;
            },
            CancellationToken.None);

    private static void Put(StoreTransaction transaction, OutboxEntry entry)
    {
        OutboxTable.Update(transaction, entry);
        Enclosures.DropWhereDone(transaction, entry);
    }

    /// <summary>One after the other. When the host is to stop, what was not begun goes back as if it had not been claimed.</summary>
    private async Task<IReadOnlyList<OutboxEntry>> SendGroupAsync(IReadOnlyList<OutboxEntry> claimed, CancellationToken cancellation)
    {
        var tried = new List<OutboxEntry>();
        foreach (var entry in claimed)
            tried.Add(cancellation.IsCancellationRequested ? Settlement.PutBack(entry) : await SendAsync(entry, cancellation));
        return tried;
    }

    /// <summary>The entry as it is to be settled.</summary>
    private async Task<OutboxEntry> SendAsync(OutboxEntry claimed, CancellationToken cancellation)
    {
        // The claim may have waited for a slow disk, or for the letters before it.
        var now = clock.GetCurrentInstant();
        return OutboxTimes.HasPassed(claimed, now)
            ? Settlement.Expire(claimed, now)
            : Settlement.Settle(claimed, await TryAsync(claimed, cancellation), clock.GetCurrentInstant());
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
