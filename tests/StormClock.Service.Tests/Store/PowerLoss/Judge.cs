using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

internal enum Verdict { Fine, Unreadable, StateNeverThere, IndexMismatch, NotWritable }

/// <summary>Opens a crash image and judges it.</summary>
internal static class Judge
{
    /// <summary>An engine caught in a ring of damaged pages never comes back; no sound image takes a hundredth of this.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <param name="write">Whether the image must also take new transactions.</param>
    public static async Task<Verdict> OfAsync(CrashImage image, IReadOnlyList<string> allowed, bool write)
    {
        try
        {
            return await Task.Run(() => OpenAsync(new SimulatedDisk(image.Data, image.Log), allowed, write)).WaitAsync(Patience);
        }
        catch (TimeoutException)
        {
            return Verdict.Unreadable;
        }
    }

    private static async Task<Verdict> OpenAsync(SimulatedDisk disk, IReadOnlyList<string> allowed, bool write)
    {
        try
        {
            using var store = new StormStore(disk.DurableStreams);
            if (!allowed.Contains(store.Read(StoreState.Of))) return Verdict.StateNeverThere;
            if (!store.Read(StoreState.IndexesMatch)) return Verdict.IndexMismatch;
            return !write || await CanWriteAsync(store, disk) ? Verdict.Fine : Verdict.NotWritable;
        }
        catch (Exception)
        {
            // Whatever the engine throws over a damaged file, the data cannot be had.
            return Verdict.Unreadable;
        }
    }

    private static async Task<bool> CanWriteAsync(StormStore store, SimulatedDisk disk)
    {
        await store.WriteAsync(transaction =>
        {
            for (var i = 0; i < 5; i++) OutboxTable.Insert(transaction, Entries.Make($"after the loss {i}"));
            Meta.Put(transaction, "last", "after the loss");
        });
        var state = store.Read(StoreState.Of);
        store.Dispose();
        using var again = new StormStore(disk.DurableStreams);
        return again.Read(StoreState.Of) == state && again.Read(StoreState.IndexesMatch);
    }
}
