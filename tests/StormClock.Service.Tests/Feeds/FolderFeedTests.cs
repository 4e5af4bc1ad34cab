using StormClock.Service.Feeds;

namespace StormClock.Service.Tests.Feeds;

public sealed class FolderFeedTests : IDisposable
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private readonly string folder = Directory.CreateTempSubdirectory("stormclock-feed-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Fetch_MessageNotTaken_IsShownAgain()
    {
        var feed = Feed("a.txt");
        Assert.Single((await feed.FetchAsync(Cancel)).Messages);
        Assert.Single((await feed.FetchAsync(Cancel)).Messages);
    }

    [Fact]
    public async Task Fetch_MessageTaken_IsShownAgainOnlyWhenItsFileChanges()
    {
        var feed = Feed("a.txt");
        await feed.TookAsync((await feed.FetchAsync(Cancel)).Messages[0], understood: true, Cancel);
        Assert.Empty((await feed.FetchAsync(Cancel)).Messages);
        await File.AppendAllTextAsync(Path.Combine(folder, "a.txt"), "more", Cancel);
        Assert.Single((await feed.FetchAsync(Cancel)).Messages);
    }

    [Fact]
    public async Task Fetch_OneFileCannotBeRead_TellsSoAndShowsTheOthers()
    {
        var feed = Feed("a.txt", "c.txt");
        File.CreateSymbolicLink(Path.Combine(folder, "b.txt"), Path.Combine(folder, "gone.txt"));
        var answer = await feed.FetchAsync(Cancel);
        Assert.Equal(["a.txt", "c.txt"], answer.Messages.Select(message => message.Name));
        Assert.Contains("b.txt", answer.Trouble);
    }

    [Fact]
    public async Task Fetch_FolderMissing_IsTroubleAndNoException() =>
        Assert.NotNull((await new FolderFeed("gone", Path.Combine(folder, "gone")).FetchAsync(Cancel)).Trouble);

    private FolderFeed Feed(params string[] files)
    {
        foreach (var file in files) File.WriteAllText(Path.Combine(folder, file), file);
        return new("test", folder);
    }
}
