using System.Text.RegularExpressions;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The service as a keeper runs it: a folder of settings and gardens, a data folder, and the clock of the world.</summary>
public sealed partial class ServeTests : IDisposable
{
    private const string NewYear = "2027-01-04T15:00:00Z";

    private readonly TempFolder folder = new();

    public ServeTests()
    {
        Directory.CreateDirectory(folder.File("config/gardens"));
        File.WriteAllText(folder.File("config/stormclock.yaml"), "pages: {listen: \"127.0.0.1:0\"}\n");
        File.WriteAllText(Garden, SampleBook.Good);
    }

    private string Garden => folder.File("config/gardens/quay.yaml");

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Serve_WithANoteWaiting_ShowsTheLetterKeepsASecondOneOutAndStopsWhenTold()
    {
        var note = await CommandRun.RunAsync("note", "wind", "--gust", "60 mph", "--from", InHours(9), "--config", folder.File("config"), "--data", folder.File("data"));
        Assert.Equal((0, ""), (note.Exit, note.Errors));

        using var service = Start();
        await service.HearAsync(said => said.Contains("quay: sent"));
        var letter = Assert.Single(Letters());
        Assert.Equal("ines@example.org", letter.To.Mailboxes.Single().Address);
        var page = await ReadPageAsync(service);
        Assert.Contains("Quay garden", page);
        Assert.Contains(letter.Subject!, page);

        var second = await ServiceProcess.RunAsync(folder.Path, "serve", "--config", "config", "--data", "data");
        Assert.Equal((3, ""), (second.Exit, second.Output));
        Assert.Equal($"another StormClock uses this data folder: {folder.File("data")}. Stop it, or name another folder.", Assert.Single(second.ErrorLines));

        service.Terminate();
        Assert.Equal((0, ""), (await service.EndAsync(), service.Errors));
        Assert.DoesNotContain("warn:", service.Output);
    }

    [Fact]
    public async Task Serve_WithNothingButADataFolder_ShowsItsPage()
    {
        File.Delete(Garden);

        using var service = Start();

        Assert.Contains("official", await ReadPageAsync(service));
        service.Terminate();
        Assert.Equal(0, await service.EndAsync());
    }

    [Fact]
    public async Task Serve_OnAPortThatIsTaken_SaysSoAndExits()
    {
        using var taken = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        taken.Start();
        File.WriteAllText(folder.File("config/stormclock.yaml"), $"pages: {{listen: \"{taken.LocalEndpoint}\"}}\n");

        var result = await ServiceProcess.RunAsync(folder.Path, "serve", "--config", "config", "--data", "data");

        Assert.Equal(3, result.Exit);
        Assert.Contains($"{taken.LocalEndpoint}", Assert.Single(result.ErrorLines));
    }

    /// <summary>By the real clock, a minute between two looks.</summary>
    [Fact(Explicit = true), Trait("Category", "Long")]
    public async Task Serve_WhileItRuns_TakesNotesAndKeepsTheLastGoodBook()
    {
        using var service = Start();
        await ReadPageAsync(service);
        await File.WriteAllTextAsync(Garden, SampleBook.Good.Replace("units: us", "units: furlongs"), TestContext.Current.CancellationToken);
        await service.HearAsync(said => said.Contains("furlongs"));

        var note = await CommandRun.RunAsync("note", "all-clear", "--garden", "quay", "--config", folder.File("config"), "--data", folder.File("data"));
        Assert.Equal(1, note.Exit);
        await File.WriteAllTextAsync(Garden, SampleBook.Good, TestContext.Current.CancellationToken);
        note = await CommandRun.RunAsync("note", "wind", "--gust", "60 mph", "--from", InHours(9), "--config", folder.File("config"), "--data", folder.File("data"));
        Assert.Equal(0, note.Exit);
        await service.HearAsync(said => said.Contains("quay: sent"));

        Assert.Single(Letters());
        Assert.Equal(1, FurlongWarnings().Count(service.Output));
        service.Terminate();
        Assert.Equal(0, await service.EndAsync());
    }

    /// <summary>The same by a clock set by hand, through the real host.</summary>
    [Fact]
    public async Task Host_GardenSpoiltWhileItRuns_TellsItOnceAndGoesByTheLastGoodBook()
    {
        var channel = new EmlChannel(folder.File("data/outgoing"), new("StormClock", "stormclock@stormclock.invalid"));
        var notes = Directory.CreateDirectory(folder.File("data/notes")).FullName;
        var shelf = new GardenShelf(folder.File("config/gardens"));
        await using var service = await VirtualService.StartAsync(
            NodaTime.Text.InstantPattern.General.Parse(NewYear).Value, shelf, _ => [new FolderFeed("notes", notes)], channel, Duration.FromMinutes(1), practice: false, folder.File("data"));
        Assert.Empty(service.Said);

        var note = await NoteWindAsync();
        Assert.Equal((0, ""), (note.Exit, note.Errors));
        await File.WriteAllTextAsync(Garden, SampleBook.Good.Replace("units: us", "units: furlongs"), TestContext.Current.CancellationToken);
        for (var i = 0; i < 3; i++) await service.AdvanceAsync(Duration.FromMinutes(1));

        var trouble = Assert.Single(service.Said, said => said.Kind == "trouble");
        Assert.StartsWith($"{Garden}:1: 'units'", trouble.Reason);
        var sent = Assert.Single(service.Said, said => said.Kind == "sent");
        Assert.Equal(("quay", "StageChanged", "ines@example.org"), (sent.Garden, sent.Reason, sent.To));
        Assert.Equal(sent.Subject, Assert.Single(Letters()).Subject);

        await File.WriteAllTextAsync(Garden, SampleBook.Good.Replace("units: us", "units: leagues"), TestContext.Current.CancellationToken);
        await service.AdvanceAsync(Duration.FromMinutes(1));
        Assert.Equal(2, service.Said.Count(said => said.Kind == "trouble"));
    }

    [Fact]
    public async Task Host_NoteThatCannotBeRead_IsToldOnceAndTheOthersAreTaken()
    {
        var notes = Directory.CreateDirectory(folder.File("data/notes")).FullName;
        await File.WriteAllTextAsync(Path.Combine(notes, "a.json"), "{\"note\": \"wind\"", TestContext.Current.CancellationToken);
        await NoteWindAsync();
        var channel = new EmlChannel(folder.File("data/outgoing"), new("StormClock", "stormclock@stormclock.invalid"));
        await using var service = await VirtualService.StartAsync(
            NodaTime.Text.InstantPattern.General.Parse(NewYear).Value, new GardenShelf(folder.File("config/gardens")), _ => [new FolderFeed("notes", notes)],
            channel, Duration.FromMinutes(1), practice: false, folder.File("data"));
        await service.AdvanceAsync(Duration.FromMinutes(1));

        Assert.Equal("notes, a.json", Assert.Single(service.Said, said => said.Kind == "trouble").Subject);
        Assert.Single(service.Said, said => said.Kind == "sent");
    }

    private Task<CommandResult> NoteWindAsync() => CommandRun.RunAsync(
        "note", "wind", "--from", "2027-01-05T00:00Z", "--gust", "60 mph", "--now", NewYear, "--config", folder.File("config"), "--data", folder.File("data"));

    private ServiceProcess Start() => ServiceProcess.Start(folder.Path, "serve", "--config", "config", "--data", "data");

    private static async Task<string> ReadPageAsync(ServiceProcess service)
    {
        await service.HearAsync(said => Address().IsMatch(said));
        using var browser = new HttpClient();
        return await browser.GetStringAsync(Address().Match(service.Output).Value, TestContext.Current.CancellationToken);
    }

    private List<MimeKit.MimeMessage> Letters() =>
        [.. Directory.GetFiles(folder.File("data/outgoing"), "*.eml").Select(file => MimeKit.MimeMessage.Load(file, TestContext.Current.CancellationToken))];

    private static string InHours(double hours) =>
        NodaTime.Text.InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm'Z'").Format(Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow()) + Duration.FromHours(hours));

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();

    [GeneratedRegex("warn: .*furlongs")]
    private static partial Regex FurlongWarnings();
}
