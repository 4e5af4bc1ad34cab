using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Desk;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Visits;

public partial class GardenPagesTests
{
    private static string Garden => $"g/{GardenHost.Garden.Id}";

    [Fact]
    public async Task Now_WhileWorkIsPlanned_ShowsTheStopThreeJobsAndTheSources()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();

        var page = await GardenHost.ReadAsync(browser, $"{Garden}/now");

        Assert.Contains("Unsafe wind could come as early as", page, StringComparison.Ordinal);
        Assert.Equal(3, Done().Count(page));
        Assert.Contains("newest content of", page, StringComparison.Ordinal);
        Assert.Contains("Official orders come before everything", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answer_PressedAndTakenBack_IsRecordedInTheGardenersName()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var job = Done().Match(await GardenHost.ReadAsync(browser, $"{Garden}/now")).Groups[1].Value;

        var pressed = await GardenHost.PostAsync(browser, $"{Garden}/now", $"{Garden}/answer", ("back", "now"), ("press", $"done {job}"));

        Assert.Equal(HttpStatusCode.SeeOther, pressed.StatusCode);
        Assert.Equal((JobProgress.Done, GardenHost.Garden.People[0].Name), (State(host, job)?.Progress, State(host, job)?.By));
        var told = await GardenHost.ReadAsync(browser, $"{Garden}/{pressed.Headers.Location}");
        Assert.Contains("Take back what I said", told, StringComparison.Ordinal);
        Assert.DoesNotContain($"done {job}", told, StringComparison.Ordinal);

        await GardenHost.PostAsync(browser, $"{Garden}/{pressed.Headers.Location}", $"{Garden}/answer", ("back", "now"), ("press", $"take_back {job}"));
        Assert.Equal(JobProgress.Open, State(host, job)?.Progress ?? JobProgress.Open);
    }

    [Theory]
    [InlineData("done no-such/thing")]
    [InlineData("burn fig-pots/move")]
    [InlineData("done")]
    [InlineData("")]
    [InlineData("done in:helper extra")]
    [InlineData("done ../../etc/passwd")]
    public async Task Answer_NotOneOfOurs_IsRefused(string press)
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        Assert.Equal(HttpStatusCode.BadRequest, (await GardenHost.PostAsync(browser, $"{Garden}/now", $"{Garden}/answer", ("back", "now"), ("press", press))).StatusCode);
    }

    [Fact]
    public async Task Answer_WithoutTheHiddenField_IsRefused()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var job = Done().Match(await GardenHost.ReadAsync(browser, $"{Garden}/now")).Groups[1].Value;
        using var form = new FormUrlEncodedContent([new("press", $"done {job}")]);
        Assert.Equal(HttpStatusCode.BadRequest, (await browser.PostAsync($"{Garden}/answer", form, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Null(State(host, job));
    }

    [Fact]
    public async Task Answer_HelperForAnothersWork_IsRefused()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        var plan = host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id].Plan!;
        var helper = GardenHost.Garden.People.First(person => person.Role == PersonRole.Helper);
        var theirs = plan.Jobs.First(job => job.People.Contains(helper.Id)).Job.Id;
        var anothers = plan.Jobs.First(job => !job.People.Contains(helper.Id)).Job.Id;
        using var browser = await host.EnterAsync(helper.Email!);

        Assert.Equal(HttpStatusCode.BadRequest, (await GardenHost.PostAsync(browser, $"{Garden}/jobs", $"{Garden}/answer", ("press", $"done {anothers}"))).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, $"{Garden}/jobs", $"{Garden}/answer", ("press", $"done {theirs}"))).StatusCode);
        Assert.Equal((helper.Name, true), (State(host, theirs)!.By, State(host, anothers) is null));
        var page = await GardenHost.ReadAsync(browser, $"{Garden}/jobs");
        Assert.DoesNotContain($"done {anothers}", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jobs_ForOnePerson_AreTheirsAlone()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var plan = host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id].Plan!;
        var helper = GardenHost.Garden.People.First(person => person.Role == PersonRole.Helper).Id;

        Assert.Equal(plan.Jobs.Select(job => job.Job.Id), Done().Matches(await GardenHost.ReadAsync(browser, $"{Garden}/jobs")).Select(match => match.Groups[1].Value).Where(plan.Jobs.Select(job => job.Job.Id).Contains));
        Assert.Equal(plan.Jobs.Where(job => job.People.Contains(helper)).Select(job => job.Job.Id), Done().Matches(await GardenHost.ReadAsync(browser, $"{Garden}/jobs?who={helper}")).Select(match => match.Groups[1].Value));
    }

    [Fact]
    public async Task Sheet_WhileWorkIsPlanned_IsAPdf()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var sheet = await browser.GetByteArrayAsync($"{Garden}/plan.pdf", TestContext.Current.CancellationToken);
        Assert.Equal("%PDF"u8.ToArray(), sheet[..4]);
    }

    [Fact]
    public async Task Worry_InAStorm_ListsEveryThingAgainstTheForecast()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var page = WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, $"{Garden}/worry"));
        Assert.All(GardenHost.Garden.Items, item => Assert.Contains(item.Name, page, StringComparison.Ordinal));
        Assert.Contains("peak gust most likely about", page, StringComparison.Ordinal);
        Assert.Contains("never a promise", page, StringComparison.Ordinal);
    }

    /// <summary>The practice storm to its end: what was done is undone, one outcome is recorded, and the storm stands in the list.</summary>
    [Fact]
    public async Task Storm_ToItsEnd_LeavesOutcomesAndARecord()
    {
        await using var host = await GardenHost.StartAsync();
        using var browser = host.NewBrowser();
        var job = host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id].Plan!.Jobs.First(job => job.Job.Undo is not null and not JobKind.Check).Job;
        await GardenHost.PostAsync(browser, $"{Garden}/jobs", $"{Garden}/answer", ("back", "jobs"), ("press", $"done {job.Id}"));
        var early = await GardenHost.PostAsync(browser, $"{Garden}/after", $"{Garden}/outcome", ("press", $"held {job.ItemId}"));
        Assert.Equal(HttpStatusCode.BadRequest, early.StatusCode);

        while (Stage(host) != Core.Stages.Stage.Recheck && host.Service.Now < Instant.FromUtc(2027, 9, 27, 0, 0)) await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Equal(Core.Stages.Stage.Recheck, Stage(host));

        var after = await GardenHost.ReadAsync(browser, $"{Garden}/after");
        Assert.Contains($"done undo:{job.Id}", after, StringComparison.Ordinal);
        Assert.Contains($"made_worse {job.ItemId}", after, StringComparison.Ordinal);
        var pressed = await GardenHost.PostAsync(browser, $"{Garden}/after/{job.ItemId}", $"{Garden}/outcome", ("press", $"leaning {job.ItemId}"), ("note", "<b>one</b> post"));
        Assert.Equal(HttpStatusCode.SeeOther, pressed.StatusCode);
        var told = await GardenHost.ReadAsync(browser, $"{Garden}/{pressed.Headers.Location}");
        Assert.DoesNotContain($"made_worse {job.ItemId}\"", told, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;one&lt;/b&gt; post", told, StringComparison.Ordinal);

        var storms = await GardenHost.ReadAsync(browser, $"{Garden}/storms");
        Assert.Contains("Highest stage: Garden closed", storms, StringComparison.Ordinal);
        Assert.Contains("One job done in time", storms, StringComparison.Ordinal);
        Assert.Contains("Leaning: 1", storms, StringComparison.Ordinal);
    }

    private static Stage Stage(GardenHost host) => host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id].Standing.Stage.Stage;

    private static JobState? State(GardenHost host, string job)
    {
        var episode = host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id].Standing.Stage.EpisodeId!;
        return host.Service.Store.Read(reader => JobStates.OfEpisode(reader, GardenHost.Garden.Id, episode)).FirstOrDefault(state => state.JobId == job);
    }

    [GeneratedRegex("value=\"done ([^\"]+)\"")]
    private static partial Regex Done();
}
