using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>
/// A working life of the store on a simulated disk: transactions over several collections, large documents, deletions,
/// checkpoints, and (where asked) processes killed at any moment, recovery included, and started again.
/// </summary>
internal sealed class Recording(SimulatedDisk disk, Func<StoreStreams> streams, Random random)
{
    public Acknowledgements Acknowledged { get; } = new();

    public int Kills { get; private set; }

    public static async Task<Recording> OfAsync(SimulatedDisk disk, Func<StoreStreams> streams, int transactions, bool kills, int seed)
    {
        var recording = new Recording(disk, streams, new Random(seed));
        await recording.RunAsync(transactions, kills);
        return recording;
    }

    private async Task RunAsync(int transactions, bool kills)
    {
        using var backups = new TempFolder();
        var store = new StormStore(streams);
        Acknowledged.Add(0, store.Read(StoreState.Of));
        for (var i = 0; i < transactions; i++)
        {
            if (kills && random.Next(10) == 0) disk.KillAfter(random.Next(12));
            try
            {
                await store.WriteAsync(transaction => Transact(transaction, i));
                if (i % 37 == 36) await store.BackupAsync(backups.File("copy.db"));
            }
            catch (StoreUnavailableException)
            {
                store.Dispose();
                store = Restart();
                // It is unknown whether the transaction was kept, so it is repeated, as every caller must be able to.
                Acknowledge(store);
                await store.WriteAsync(transaction => Transact(transaction, i));
            }

            Acknowledge(store);
        }

        store.Dispose();
    }

    private void Acknowledge(StormStore store) => Acknowledged.Add(disk.Ops.Count, store.Read(StoreState.Of));

    private StormStore Restart()
    {
        Kills++;
        while (true)
        {
            disk.Revive();
            if (random.Next(3) == 0) disk.KillAfter(random.Next(8));
            try
            {
                var store = new StormStore(streams);
                disk.Revive();
                return store;
            }
            catch (IOException)
            {
                Kills++;
            }
        }
    }

    /// <summary>Transaction <paramref name="i"/>; running it twice is the same as once.</summary>
    public static void Transact(StoreTransaction transaction, int i)
    {
        var entry = Entries.Make($"o{i}", Entries.Start + Duration.FromMinutes(i), garden: $"garden {i % 3}");
        if (OutboxTable.Find(transaction, entry.Id) is null) OutboxTable.Insert(transaction, entry);
        JobStates.Put(transaction, "hollow", $"e{i % 4}", new JobState($"b{i % 11}", (JobProgress)(i % 5), entry.Moment, "ada"));
        Meta.Put(transaction, "last", $"{i}");
        if (i % 2 == 1) Change(transaction, i - 1, sent => sent with { State = OutboxState.Sent, Settled = sent.Moment, Attempts = 1 });
        if (i % 5 == 4) Advisories.Add(transaction, new HeardAdvisory($"a{i}", Bytes(i), "cap", entry.Moment, entry.Moment, "feed"));
        if (i % 50 == 49) OutboxTable.ForgetSettledBefore(transaction, entry.Moment - Duration.FromMinutes(40));
        if (i % 50 == 24) Advisories.ForgetHeardBefore(transaction, entry.Moment - Duration.FromMinutes(20));
    }

    private static void Change(StoreTransaction transaction, int i, Func<OutboxEntry, OutboxEntry> change)
    {
        var id = Entries.Make($"o{i}", garden: $"garden {i % 3}").Id;
        if (OutboxTable.Find(transaction, id) is { } entry) OutboxTable.Update(transaction, change(entry));
    }

    private static byte[] Bytes(int i)
    {
        var bytes = new byte[500 + (i * 97 % 30_000)];
        new Random(i).NextBytes(bytes);
        return bytes;
    }
}
