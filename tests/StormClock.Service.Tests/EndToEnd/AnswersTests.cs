using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Formats;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Wakeups;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>Answers on the real pages in the practice storm: what the plan and the other people get to see of them.</summary>
public sealed partial class AnswersTests : IDisposable
{
    /// <summary>Monday 07:00 EDT, and Wednesday 23:00 EDT, an hour before the garden closes.</summary>
    private static readonly Instant Monday = Instant.FromUtc(2027, 9, 20, 11, 0);
    private static readonly Instant Wednesday = Instant.FromUtc(2027, 9, 23, 3, 0);

    private static readonly Lazy<GardenBook> Garden = new(() =>
        GardenReader.Read(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml")), "tern-hook").Value!);

    private readonly TempFolder data = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => data.Dispose();

    [Fact]
    public async Task Cannot_NoMaterial_LeavesTheNewestPlanUntilItIsTakenBack()
    {
        await using var service = await StartAsync(Monday);
        var job = Letter(service, "gardener").JobIds.First(id => Garden.Value.Jobs.First(job => job.Id == id).Materials.Count > 0);
        var link = Link(AckPurpose.Job, service, "gardener", job);
        Assert.Contains("Newest plan: start", await ReadAsync(service, link), StringComparison.Ordinal);

        await PressAsync(service, link, "no_material");
        var page = await ReadAsync(service, link);
        Assert.Contains("Recorded: cannot be done, no material.", page, StringComparison.Ordinal);
        Assert.Contains("Left out of the newest plan: the material is missing, says Delphine", page, StringComparison.Ordinal);

        await PressAsync(service, link, "take_back");
        page = await ReadAsync(service, link);
        Assert.Contains("Not marked yet", page, StringComparison.Ordinal);
        Assert.Contains("Newest plan: start", page, StringComparison.Ordinal);
    }

    /// <summary>All of these, taken back: what somebody else had said before stands again, and what they said is not the reader's to take back.</summary>
    [Fact]
    public async Task TakeBack_OfAll_LetsStandWhatWasSaidBefore()
    {
        await using var service = await StartAsync(Monday);
        var letter = Letter(service, "gardener");
        var first = letter.JobIds[0];
        await PressAsync(service, Link(AckPurpose.Job, service, "helper", first), "done");
        var all = Link(AckPurpose.All, service, "gardener", AckList.Hash(letter.JobIds));
        Assert.DoesNotContain("take_back", await ReadAsync(service, all), StringComparison.Ordinal);

        await PressAsync(service, all, "later");
        Assert.All(States(service), state => Assert.Equal(JobProgress.Later, state.Progress));
        await PressAsync(service, all, "take_back");
        await PressAsync(service, all, "take_back");
        Assert.Equal([(first, JobProgress.Done, "Amos")], States(service).Where(state => state.Progress != JobProgress.Open).Select(state => (state.JobId, state.Progress, state.By)));
        Assert.Equal(letter.JobIds.Count, States(service).Count);
    }

    /// <summary>A list of long ago: what was done since, by whom, and what the newest plan has, not what the message said.</summary>
    [Fact]
    public async Task Link_OfAnOlderPlan_TellsWhatHoldsNow()
    {
        await using var service = await StartAsync(Monday);
        var letter = Letter(service, "gardener");
        var all = Link(AckPurpose.All, service, "gardener", AckList.Hash(letter.JobIds));
        await PressAsync(service, Link(AckPurpose.Job, service, "helper", letter.JobIds[0]), "done");
        await service.AdvanceAsync(Duration.FromHours(24));
        var page = WebUtility.HtmlDecode(await ReadAsync(service, all));
        Assert.Contains("Done: Amos, Mon\u00A007:00\u00A0EDT", page, StringComparison.Ordinal);
        Assert.Equal(letter.JobIds.Count, page.Split("<li><strong>").Length - 1);
        Assert.DoesNotContain("start Mon", page, StringComparison.Ordinal);
        Assert.Contains("Newest plan: start", page, StringComparison.Ordinal);

        await CloseAsync(service);
        page = WebUtility.HtmlDecode(await ReadAsync(service, all));
        Assert.Contains("Garden closed", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Newest plan", page, StringComparison.Ordinal);
        Assert.DoesNotContain("value=\"later\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task In_PressedByOne_IsSeenByTheOtherAndOnlyTheSilentOneIsPhoned()
    {
        Instant closed;
        await using (var service = await StartAsync(Wednesday))
        {
            await CloseAsync(service);
            closed = service.Now;
            var gardener = InLink(service, "gardener");
            Assert.Contains("Nothing heard of Amos yet.", await ReadAsync(service, gardener), StringComparison.Ordinal);
            await PressAsync(service, gardener, "done");
            await PressAsync(service, gardener, "done");
            Assert.Single(service.Said, said => said.Reason == JournalEntry.In);
            Assert.Contains("You said that you are in, Thu", await ReadAsync(service, gardener), StringComparison.Ordinal);
            Assert.Contains("Delphine is in, Thu", await ReadAsync(service, InLink(service, "helper")), StringComparison.Ordinal);
        }

        // What was pressed survives a restart.
        await using var again = await StartAsync(closed + Duration.FromHours(1.1));
        var told = Assert.Single(again.Outbox("tern-hook"), entry => entry.Reason == "NotIn");
        Assert.Equal(("gardener", OutboxState.Sent, "Phone Amos, do not go out: Tern Hook (invented)"), (told.PersonId, told.State, told.Message.Subject));
        await again.AdvanceAsync(Duration.FromHours(5));
        Assert.Single(again.Outbox("tern-hook"), entry => entry.Reason == "NotIn");
    }

    /// <summary>Where messages carry no links nobody can press, so nobody is missed.</summary>
    [Fact]
    public async Task In_WithoutLinks_TellsNobody()
    {
        await using var service = await StartAsync(Wednesday, pages: null);
        await CloseAsync(service);
        await service.AdvanceAsync(Duration.FromHours(3));
        Assert.DoesNotContain(service.Outbox("tern-hook"), entry => entry.Reason == "NotIn");
    }

    /// <summary>A turn that hangs on a slow mail server holds no page: the answer is kept, and the plan follows when it can.</summary>
    [Fact]
    public async Task Done_WhileATurnHangs_IsKeptAndThePageAnswers()
    {
        await using var service = await StartAsync(Monday, practice: false);
        var job = Letter(service, "gardener").JobIds[0];
        var slow = new TaskCompletionSource<int>();
        var held = service.Services.GetRequiredService<Turns>().BetweenAsync(() => slow.Task, Cancel);
        await PressAsync(service, Link(AckPurpose.Job, service, "gardener", job), "done");
        Assert.False(held.IsCompleted);
        Assert.Equal((job, JobProgress.Done), States(service).Select(state => (state.JobId, state.Progress)).Single());
        slow.SetResult(0);
        await held;
    }

    private static OutboxEntry Letter(VirtualService service, string person) =>
        service.Outbox("tern-hook").Last(entry => entry.PersonId == person && entry.JobIds.Count > 1);

    private static string InLink(VirtualService service, string person) =>
        LinkOf().Match(service.Outbox("tern-hook").Single(entry => entry.PersonId == person && IsClosing(entry)).Message.Text).Groups[1].Value;

    private string Link(AckPurpose purpose, VirtualService service, string person, string subject)
    {
        var key = AckKeyFile.ReadOrMake(data.File("link-keys")).Value!.Newest;
        return "/j/" + new AckToken(purpose, "tern-hook", Episode(service), person, subject, Monday + Duration.FromDays(30)).Sign(key);
    }

    private static string Episode(VirtualService service) => service.Outbox("tern-hook")[0].Key.Split('|')[1];

    private static IReadOnlyList<JobState> States(VirtualService service)
    {
        var episode = Episode(service);
        return service.Store.Read(reader => JobStates.OfEpisode(reader, "tern-hook", episode));
    }

    /// <summary>Until the garden is closed.</summary>
    private static async Task CloseAsync(VirtualService service)
    {
        while (!service.Outbox("tern-hook").Any(IsClosing)) await service.AdvanceAsync(Duration.FromMinutes(30));
    }

    private static bool IsClosing(OutboxEntry entry) => entry.Message.Subject.StartsWith("Stop now", StringComparison.Ordinal);

    private static async Task<string> ReadAsync(VirtualService service, string link)
    {
        using var browser = new HttpClient { BaseAddress = service.Address };
        return await browser.GetStringAsync(link, Cancel);
    }

    private static async Task PressAsync(VirtualService service, string link, string answer)
    {
        using var browser = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = service.Address };
        var hidden = Hidden().Match(await browser.GetStringAsync(link, Cancel)).Groups[1].Value;
        using var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["answer"] = answer, ["__RequestVerificationToken"] = hidden });
        Assert.Equal(HttpStatusCode.SeeOther, (await browser.PostAsync(link, form, Cancel)).StatusCode);
    }

    private Task<VirtualService> StartAsync(Instant begin, string? pages = "https://garden.example", bool practice = true)
    {
        var storm = Directory.GetFiles(Path.Combine(ConfigFiles.Folder, "practice", "storm")).Where(file => Path.GetExtension(file) is ".txt" or ".xml")
            .Select(file => new RawMessage(file, File.ReadAllBytes(file))).Select(raw => (MessageReader.Read(raw.Bytes).Value!.Issued, raw)).OrderBy(message => message.Issued).ToList();
        return VirtualService.StartAsync(
            begin, new GardenShelf([Garden.Value]), clock => [new ReplayFeed(storm, clock)], new TestChannel("email", DeliveryResult.Delivered), Duration.FromMinutes(30), practice, data.Path,
            plan => plan with { PagesAddress = pages is null ? null : new(pages) });
    }

    [GeneratedRegex(@"https://garden\.example(/j/[A-Za-z0-9_-]+)")]
    private static partial Regex LinkOf();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Hidden();
}
