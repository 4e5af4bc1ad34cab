using System.IO.Compression;
using System.Net;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;
using StormClock.Service.Visits;

namespace StormClock.Service.Tests.Visits;

public class KeeperPageTests
{
    [Fact]
    public async Task Keeper_AtTheBox_ShowsSourcesPeopleAndTheLog()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var page = await GardenHost.ReadAsync(browser, "keeper");
        Assert.Contains("gardener@practice.invalid", page, StringComparison.Ordinal);
        Assert.Contains("advisory  heard", page, StringComparison.Ordinal);
        Assert.Contains("No passcode is set", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keeper_AnybodyElse_IsNotLetIn()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var stranger = host.NewBrowser();
        var answer = await stranger.GetAsync("keeper", TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.SeeOther, "in"), (answer.StatusCode, answer.Headers.Location?.OriginalString));
        Assert.Equal(HttpStatusCode.NotFound, (await GardenHost.PostAsync(stranger, "in", "keeper/passcode", ("fresh", "abcdefghijklmnop"), ("again", "abcdefghijklmnop"))).StatusCode);

        using var gardener = await host.EnterAsync("gardener@practice.invalid");
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, "keeper"));
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, "keeper/backup.zip"));
    }

    [Theory]
    [InlineData("fourteen chars", "fourteen chars", "must have 15")]
    [InlineData("four words in a row", "four words in a raw", "not the same")]
    public async Task Passcode_BadOne_ChangesNothing(string fresh, string again, string told)
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var answer = await GardenHost.PostAsync(browser, "keeper", "keeper/passcode", ("fresh", fresh), ("again", again));
        Assert.Contains(told, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.False(new PasscodeFile(host.Data.File(PasscodeFile.Name)).IsSet);
    }

    [Fact]
    public async Task Passcode_Set_ClosesTheBoxToWhoeverSitsAtIt()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, "keeper", "keeper/passcode", ("fresh", GardenHost.Passcode), ("again", GardenHost.Passcode))).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(browser, "keeper"));
        using var keeper = await host.EnterByPasscodeAsync();
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(keeper, "keeper"));
    }

    /// <summary>What the archive holds is opened as a store again, and a second one leaves nothing behind.</summary>
    [Fact]
    public async Task Backup_TakenWhileItRuns_OpensAsAStore()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        await browser.GetByteArrayAsync("keeper/backup.zip", TestContext.Current.CancellationToken);
        var bytes = await browser.GetByteArrayAsync("keeper/backup.zip", TestContext.Current.CancellationToken);
        using var folder = new TempFolder();
        await ZipFile.ExtractToDirectoryAsync(new MemoryStream(bytes), folder.Path, TestContext.Current.CancellationToken);

        Assert.True(File.Exists(folder.File("data/link-keys")));
        using var store = StormStore.Open(folder.File("data"));
        Assert.Equal(host.Service.Outbox(GardenHost.Garden.Id).Count, store.Read(reader => StormClock.Service.Outbox.OutboxTable.OfGarden(reader, GardenHost.Garden.Id)).Count);
        Assert.Empty(Directory.GetDirectories(host.Data.Path, "backup-*"));
    }
}
