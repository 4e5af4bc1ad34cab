using StormClock.Core.Units;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Photos;
using StormClock.Service.Store;

namespace StormClock.Service.Desk;

/// <summary>
/// One turn of the whole way: listen, decide for every garden, send what is due. Turns never overlap; a link that is pressed
/// takes its turn like everything else.
/// </summary>
public sealed class Round(
    GardenShelf shelf, PhotoDesk photos, Inbox inbox, FeedRound feeds, GardenDesk desk, Dispatcher dispatcher, StormStore store, Journal journal, IClock clock) : IDisposable
{
    private readonly SemaphoreSlim turn = new(1, 1);

    /// <summary>When the next decision or message is due; null when only news can bring one.</summary>
    public Instant? NextWake { get; private set; }

    /// <param name="listen">Look at the feeds first.</param>
    public async Task RunAsync(bool listen, CancellationToken cancellation)
    {
        // Before the turn is taken: an answer pressed meanwhile need not wait for the network.
        var heard = listen ? await feeds.AskAsync(desk.IsStorm, cancellation) : [];
        await turn.WaitAsync(cancellation);
        try
        {
            if (listen)
            {
                foreach (var fault in shelf.Refresh().Concat(await photos.SetAsideAsync(shelf.Books))) journal.Write(new(clock.GetCurrentInstant(), "trouble", Reason: fault, Subject: "garden book"));
                await inbox.TakeInAsync(heard, cancellation);
            }

            var wake = await desk.DecideAllAsync(cancellation);
            Report(await dispatcher.RunAsync(cancellation));
            NextWake = Moments.Sooner(wake, store.Read(OutboxTable.NextDue));
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Something short that uses what a turn uses, such as its channels, when no turn is being taken.</summary>
    public async Task<T> BetweenTurnsAsync<T>(Func<Task<T>> work, CancellationToken cancellation)
    {
        await turn.WaitAsync(cancellation);
        try
        {
            return await work();
        }
        finally
        {
            turn.Release();
        }
    }

    public void Dispose() => turn.Dispose();

    private void Report(DispatchRun run)
    {
        foreach (var entry in run.Settled.Where(entry => entry.Settled is not null))
        {
            journal.Write(entry.State == OutboxState.Sent ? JournalEntry.Sent(entry) : JournalEntry.Missed(entry));
        }
    }
}
