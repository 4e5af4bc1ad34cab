using System.Globalization;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>
/// The power goes at a random moment and the disk keeps a random part of what it was not told to keep. Killing a process
/// cannot show this, because the system's cache survives it. Seeds fix the lives, the cuts and what is lost; the engine
/// draws the levels of its index nodes by itself, so the numbers of operations differ a little from run to run.
/// </summary>
public class PowerLossTests(ITestOutputHelper output)
{
    private const int Transactions = 150;

    [Theory]
    [InlineData(11, false, 700)]
    [InlineData(12, true, 700)]
    public async Task DurableStreams_AnyPowerLoss_LosesNothingAcknowledged(int seed, bool kills, int images)
    {
        var verdicts = await JudgeAsync(seed, kills, images, durable: true);

        Assert.Equal(images, verdicts[Verdict.Fine]);
    }

    /// <summary>The power goes a second time, while the store is recovering from the first.</summary>
    [Fact]
    public async Task DurableStreams_PowerLossDuringRecovery_LosesNothingAcknowledged()
    {
        const int Images = 300;
        var random = new Random(13);
        var disk = SimulatedDisk.WithEmptyDatabase();
        var recording = await Recording.OfAsync(disk, disk.DurableStreams, Transactions, kills: true, seed: 13);
        var fine = 0;
        foreach (var image in CrashImages.Of(disk, Images, random))
        {
            var recovering = new SimulatedDisk(image.Data, image.Log);
            new StormStore(recovering.DurableStreams).Dispose();
            var second = CrashImages.Of(recovering, 1, random).Single();
            if (await Judge.OfAsync(second, recording.Acknowledged.AllowedAt(image.Cut), write: true) == Verdict.Fine) fine++;
        }

        Assert.Equal(Images, fine);
    }

    /// <summary>
    /// The process is killed at each single step of a commit, and the power goes while, or just after, the next process
    /// recovers: what that process read from the system's cache and built upon must not be lost under it.
    /// </summary>
    [Fact]
    public async Task DurableStreams_KilledInsideCommitThenPowerLoss_LosesNothingShown()
    {
        const int ImagesPerStep = 25;
        var random = new Random(14);
        var before = SimulatedDisk.WithEmptyDatabase();
        await Recording.OfAsync(before, before.DurableStreams, 20, kills: false, seed: 14);
        int steps = 0, fine = 0;
        for (var committed = false; !committed; steps++)
        {
            var disk = new SimulatedDisk(before.Contents(0), before.Contents(1));
            var shown = new Acknowledgements();
            committed = await KillAtStepAsync(disk, steps, shown);
            foreach (var image in CrashImages.Of(disk, ImagesPerStep, random))
            {
                if (await Judge.OfAsync(image, shown.AllowedAt(image.Cut), write: false) == Verdict.Fine) fine++;
            }
        }

        output.WriteLine($"{steps} steps, {steps * ImagesPerStep} images");
        Assert.InRange(steps, 10, 100);
        Assert.Equal(steps * ImagesPerStep, fine);
    }

    /// <summary>The proof that the simulation can fail: the engine's own way of writing does not pass it.</summary>
    [Fact]
    public async Task PlainStreams_SamePowerLosses_LoseOrDamage()
    {
        var verdicts = await JudgeAsync(11, kills: false, 150, durable: false);

        Assert.InRange(verdicts[Verdict.Fine], 0, 120);
        Assert.NotEqual(0, verdicts[Verdict.Unreadable]);
        Assert.NotEqual(0, verdicts[Verdict.StateNeverThere]);
    }

    [Fact(Explicit = true), Trait("Category", "Long")]
    public async Task DurableStreams_ManyMoreLives_LoseNothingAcknowledged()
    {
        for (var seed = 100; seed < 120; seed++)
            Assert.Equal(1000, (await JudgeAsync(seed, kills: seed % 2 == 0, 1000, durable: true))[Verdict.Fine]);
    }

    /// <summary>Whether the commit had more steps than that.</summary>
    private static async Task<bool> KillAtStepAsync(SimulatedDisk disk, int step, Acknowledgements shown)
    {
        var store = new StormStore(disk.DurableStreams);
        shown.Add(0, store.Read(StoreState.Of));
        disk.KillAfter(step);
        var committed = true;
        try
        {
            await store.WriteAsync(transaction => Recording.Transact(transaction, 20));
        }
        catch (StoreUnavailableException)
        {
            committed = false;
        }

        disk.KillAfter(0);
        store.Dispose();
        disk.Revive();
        using var next = new StormStore(disk.DurableStreams);
        shown.Add(disk.Ops.Count, next.Read(StoreState.Of));
        return committed;
    }

    private async Task<Dictionary<Verdict, int>> JudgeAsync(int seed, bool kills, int images, bool durable)
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        var recording = await Recording.OfAsync(disk, durable ? disk.DurableStreams : disk.PlainStreams, Transactions, kills, seed);
        var verdicts = Enum.GetValues<Verdict>().ToDictionary(verdict => verdict, _ => 0);
        foreach (var image in CrashImages.Of(disk, images, new Random(seed)))
            verdicts[await Judge.OfAsync(image, recording.Acknowledged.AllowedAt(image.Cut), write: durable)]++;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{disk.Ops.Count} operations, {recording.Kills} kills: {string.Join(", ", verdicts)}"));
        return verdicts;
    }
}
