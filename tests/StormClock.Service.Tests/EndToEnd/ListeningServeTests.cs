using System.Text.Json;
using System.Text.RegularExpressions;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Feeds;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The real program with feeds on a server of this machine.</summary>
public sealed partial class ListeningServeTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Serve_OneGoodAndOneBrokenFeed_HearsRecordsAndShowsBoth()
    {
        await using var server = await StubServer.StartAsync();
        server.OnBody("/storm", Listener.Message(1));
        Directory.CreateDirectory(folder.File("config/gardens"));
        await File.WriteAllTextAsync(folder.File("config/gardens/quay.yaml"), SampleBook.Good, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(
            folder.File("config/stormclock.yaml"),
            $"pages: {{listen: \"127.0.0.1:0\"}}\nfeeds:\n  - {{name: storm, kind: url, at: \"{server.At("/storm")}\"}}\n  - {{name: gone, kind: list, at: \"{server.At("/gone")}\"}}\n",
            TestContext.Current.CancellationToken);

        using var service = ServiceProcess.Start(folder.Path, "serve", "--config", "config", "--data", "data", "--record", "recorded");
        await service.HearAsync(said => said.Contains("heard ") && said.Contains("trouble") && Address().IsMatch(said));
        using var browser = new HttpClient();
        var health = JsonDocument.Parse(await (await browser.GetAsync(Address().Match(service.Output).Value + "/health", TestContext.Current.CancellationToken)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        service.Terminate();
        Assert.Equal(0, await service.EndAsync());

        var feeds = health.GetProperty("feeds").EnumerateArray().ToDictionary(feed => feed.GetProperty("name").GetString()!);
        Assert.False(health.GetProperty("good").GetBoolean());
        Assert.Equal(["all sources", "storm", "gone", "notes"], feeds.Keys);
        Assert.Equal((0, 1), (feeds["storm"].GetProperty("failures").GetInt32(), feeds["gone"].GetProperty("failures").GetInt32()));
        Assert.Contains("nothing at this address", feeds["gone"].GetProperty("lastError").GetString());
        Assert.Equal(2, Directory.GetFiles(folder.File("recorded"), "*.answer.json").Length);
        Assert.Equal(Listener.Message(1), await File.ReadAllBytesAsync(Assert.Single(Directory.GetFiles(folder.File("recorded"), "*.body")), TestContext.Current.CancellationToken));
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
