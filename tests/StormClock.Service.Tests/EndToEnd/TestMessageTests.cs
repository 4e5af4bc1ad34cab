using Microsoft.Extensions.DependencyInjection;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Wakeups;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>A test message from the page and a turn's messages go through the same channel, which serves one at a time.</summary>
public class TestMessageTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Send_WhileATurnIsTaken_WaitsForItsEnd()
    {
        var garden = GardenReader.Read(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml")), "tern-hook").Value!;
        var channel = new TestChannel("email", DeliveryResult.Delivered);
        await using var service = await VirtualService.StartAsync(Instant.FromUtc(2027, 9, 1, 12, 0), new GardenShelf([garden]), _ => [], channel, Duration.FromMinutes(30), practice: true);
        var before = channel.Sent.Count;
        var end = new TaskCompletionSource<bool>();
        var taken = service.Services.GetRequiredService<Turns>().BetweenAsync(() => end.Task, Cancel);

        var test = service.Services.GetRequiredService<IJobBook>().SendTestAsync(garden.Id, "gardener", service.Now);
        Assert.False(test.IsCompleted);
        Assert.Equal(before, channel.Sent.Count);

        end.SetResult(true);
        await taken;
        Assert.True((await test)!.Delivered);
        Assert.Equal(before + 1, channel.Sent.Count);
    }
}
