using System.Globalization;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>
/// The power goes at a random moment and the disk keeps a random part of what it was not told to keep. Killing a process
/// cannot show this, because the system's cache survives it.
/// </summary>
public class PowerLossTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(11, false, 700)]
    [InlineData(12, true, 700)]
    public async Task DurableStreams_AnyPowerLoss_LosesNothingAcknowledged(int seed, bool kills, int images)
    {
        var verdicts = await JudgeAsync(seed, kills, images, durable: true);

        Assert.Equal(images, verdicts[Verdict.Fine]);
    }

    /// <summary>The power goes a second time, while the store is recovering from the first.</summary>
    [Theory]
    [InlineData(13, 300, 2)]
    public async Task DurableStreams_PowerLossDuringRecovery_LosesNothingAcknowledged(int seed, int images, int again)
    {
        var random = new Random(seed);
        var disk = SimulatedDisk.WithEmptyDatabase();
        var recording = await Recording.OfAsync(disk, disk.DurableStreams, 250, kills: true, seed);
        var verdicts = new List<Verdict>();
        foreach (var image in CrashImages.Of(disk, images, random))
        {
            var recovering = new SimulatedDisk(image.Data, image.Log);
            new StormStore(recovering.DurableStreams).Dispose();
            foreach (var second in CrashImages.Of(recovering, again, random))
                verdicts.Add(await Judge.OfAsync(second, recording.AllowedAt(image.Cut)));
        }

        Assert.Equal(images * again, verdicts.Count(verdict => verdict == Verdict.Fine));
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

    private async Task<Dictionary<Verdict, int>> JudgeAsync(int seed, bool kills, int images, bool durable)
    {
        var disk = SimulatedDisk.WithEmptyDatabase();
        var recording = await Recording.OfAsync(disk, durable ? disk.DurableStreams : disk.PlainStreams, 250, kills, seed);
        var verdicts = Enum.GetValues<Verdict>().ToDictionary(verdict => verdict, _ => 0);
        foreach (var image in CrashImages.Of(disk, images, new Random(seed)))
            verdicts[await Judge.OfAsync(image, recording.AllowedAt(image.Cut))]++;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{disk.Ops.Count} operations, {recording.Kills} kills: {string.Join(", ", verdicts)}"));
        return verdicts;
    }
}
