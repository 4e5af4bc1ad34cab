using System.Net;
using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Authorization;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Desk;
using StormClock.Service.Store;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Tests.Visits;
using StormClock.Service.Web.Api;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>What a program says in a storm, and what comes of it.</summary>
public class ApiStormTests
{
    private const string Garden = "gardens/tern-hook";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Answer_GivenChangedAndTakenBack_StandsInTheOwnersName()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var program = await ProgramAsync(host, "gardener@practice.invalid");
        var job = Latest(host).Plan!.Jobs[0].Job.Id;
        var name = GardenHost.Garden.People.First(person => person.Role == PersonRole.Gardener).Name;

        foreach (var (answer, progress, why) in new[] { ("later", "later", null), ("no_time", "cannot", "no_time"), ("needs_person", "cannot", "needs_person"), ("cannot", "cannot", null), ("done", "done", (string?)null), ("done", "done", null) })
        {
            var said = await ApiCaller.TakenAsync(program, $"{Garden}/jobs/answer", Body(job, answer));
            Assert.Equal((job, progress, why, name), ((string)said["job"]!, (string)said["progress"]!, (string?)said["cannotWhy"], (string)said["by"]!));
        }

        var answered = Assert.Single((await ApiCaller.ReadAsync(program, $"{Garden}/jobs"))["answered"]!.AsArray())!;
        Assert.Equal((job, "done", "2027-09-20T11:00:00Z"), ((string)answered["id"]!, (string)answered["progress"]!, (string)answered["at"]!));
        Assert.Equal("cannot", (string)(await ApiCaller.TakenAsync(program, $"{Garden}/jobs/answer", Body(job, "take_back")))["progress"]!);
    }

    [Fact]
    public async Task Answer_OfAHelper_IsForTheirOwnWork()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var program = await ProgramAsync(host, "helper@practice.invalid");
        var plan = Latest(host).Plan!;
        var anothers = plan.Jobs.First(job => !job.People.Contains(ApiHost.Helper.Id)).Job.Id;
        var theirs = plan.Jobs.First(job => job.People.Contains(ApiHost.Helper.Id)).Job.Id;
        Assert.StartsWith("job:", await ApiCaller.ProblemAsync(HttpStatusCode.NotFound, await ApiCaller.SendAsync(program, $"{Garden}/jobs/answer", Body(anothers, "done"))), StringComparison.Ordinal);
        Assert.Equal(ApiHost.Helper.Name, (string)(await ApiCaller.TakenAsync(program, $"{Garden}/jobs/answer", Body(theirs, "done")))["by"]!);
        Assert.Equal([theirs], host.Service.Store.Read(reader => JobStates.OfEpisode(reader, GardenHost.Garden.Id, Latest(host).Standing.Stage.EpisodeId!)).Select(state => state.JobId));
    }

    /// <summary>The practice storm to its end: closed, everybody in, recheck, an outcome, something undone.</summary>
    [Fact]
    public async Task Storm_ToItsEnd_IsToldAndTaken()
    {
        await using var host = await GardenHost.StartAsync(passcode: true);
        using var gardener = await ProgramAsync(host, "gardener@practice.invalid");
        using var helper = await ProgramAsync(host, "helper@practice.invalid");
        var job = Latest(host).Plan!.Jobs.First(job => job.Job.Undo is not null and not JobKind.Check).Job;
        await ApiCaller.TakenAsync(gardener, $"{Garden}/jobs/answer", Body(job.Id, "done"));

        await ReachAsync(host, Stage.GardenClosed);
        var closed = await ApiCaller.ReadAsync(helper, $"{Garden}/now");
        Assert.Equal(("garden_closed", true, true), ((string)closed["stage"]!, (bool)closed["workIsOver"]!, closed["workStops"] is null));
        Assert.Equal(2, closed["indoors"]!.AsArray().Count(person => person!["since"] is null));
        Assert.StartsWith("person:", await ApiCaller.ProblemAsync(HttpStatusCode.NotFound, await ApiCaller.SendAsync(helper, $"{Garden}/in", """{"person":"gardener"}""")), StringComparison.Ordinal);
        await ApiCaller.ProblemAsync(HttpStatusCode.NotFound, await ApiCaller.SendAsync(gardener, $"{Garden}/in", """{"person":"nobody"}"""));
        Assert.Equal(Iso(host.Service.Now), (string)(await ApiCaller.TakenAsync(helper, $"{Garden}/in", """{"person":"helper"}"""))["since"]!);
        await ApiCaller.TakenAsync(gardener, $"{Garden}/in", """{"person":"gardener"}""");
        Assert.All((await ApiCaller.ReadAsync(gardener, $"{Garden}/now"))["indoors"]!.AsArray(), person => Assert.Equal(Iso(host.Service.Now), (string?)person!["since"]));
        var work = await ApiCaller.ReadAsync(gardener, $"{Garden}/jobs");
        Assert.Empty(work["planned"]!.AsArray());
        Assert.All(work["open"]!.AsArray(), line => Assert.Null(line!["start"]));
        Assert.NotEmpty(work["open"]!.AsArray());
        Assert.Empty((await ApiCaller.ReadAsync(gardener, $"{Garden}/plan"))["jobs"]!.AsArray());
        Assert.Empty((await ApiCaller.ReadAsync(gardener, $"{Garden}/after"))["undo"]!.AsArray());

        await ReachAsync(host, Stage.Recheck);
        var after = await ApiCaller.ReadAsync(helper, $"{Garden}/after");
        Assert.Equal(GardenHost.Garden.Items.Select(item => item.Id).Order(StringComparer.Ordinal), after["look"]!.AsArray().Select(look => (string)look!["item"]!).Order(StringComparer.Ordinal));
        Assert.Equal($"undo:{job.Id}", (string)Assert.Single(after["undo"]!.AsArray())!["id"]!);
        var found = await ApiCaller.TakenAsync(gardener, $"{Garden}/after/outcome", new JsonObject { ["item"] = job.ItemId, ["outcome"] = "made_worse", ["note"] = " <b>one</b> post\u0007 " }.ToJsonString());
        Assert.Equal((job.ItemId, "made_worse", "<b>one</b> post\u0007"), ((string)found["item"]!, (string)found["outcome"]!, (string)found["note"]!));
        Assert.Equal("leaning", (string)(await ApiCaller.TakenAsync(helper, $"{Garden}/after/outcome", $$"""{"item":"{{job.ItemId}}","outcome":"leaning"}"""))["outcome"]!);
        Assert.StartsWith("item:", await ApiCaller.ProblemAsync(HttpStatusCode.NotFound, await ApiCaller.SendAsync(gardener, $"{Garden}/after/outcome", """{"item":"no-such","outcome":"held"}""")), StringComparison.Ordinal);
        await ApiCaller.TakenAsync(helper, $"{Garden}/jobs/answer", Body($"undo:{job.Id}", "done"));

        after = await ApiCaller.ReadAsync(gardener, $"{Garden}/after");
        Assert.Empty(after["undo"]!.AsArray());
        Assert.DoesNotContain(job.ItemId, after["look"]!.AsArray().Select(look => (string)look!["item"]!));
        Assert.Equal((job.ItemId, "leaning", ApiHost.Helper.Name), Assert.Single(after["found"]!.AsArray()) is { } line ? ((string)line["item"]!, (string)line["outcome"]!, (string)line["by"]!) : default);
        var storm = (await ApiCaller.ReadAsync(gardener, $"{Garden}/storms"))["storms"]![0]!;
        Assert.Equal(("garden_closed", 1, 1), ((string)storm["highest"]!, (int)storm["doneInTime"]!, (int)storm["outcomes"]!["leaning"]!));
        Assert.NotNull(storm["closed"]);
    }

    /// <summary>"Nothing due" would be good news that nobody has.</summary>
    [Fact]
    public async Task Garden_BeforeTheFirstLook_IsNotToldAsQuiet()
    {
        using var books = new TempFolder();
        var text = (await File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"), Cancellation)).Replace(", practice: true", "", StringComparison.Ordinal);
        await File.WriteAllTextAsync(books.File("tern-hook.yaml"), text, Cancellation);
        await using var host = await GardenHost.StartAsync(shelf: new(books.Path));
        await File.WriteAllTextAsync(books.File("late.yaml"), text.Replace("id: tern-hook", "id: late", StringComparison.Ordinal), Cancellation);
        Assert.Empty(host.Service.Services.GetRequiredService<GardenShelf>().Refresh());

        using var program = host.Program();
        var late = Assert.Single((await ApiCaller.ReadAsync(program, "gardens"))["gardens"]!.AsArray(), garden => (string)garden!["id"]! == "late");
        Assert.Null(late!["stage"]);
        foreach (var path in new[] { "now", "jobs", "plan", "after" })
        {
            var answer = await program.GetAsync($"gardens/late/{path}", Cancellation);
            Assert.Contains("nothing is known yet", await ApiCaller.ProblemAsync(HttpStatusCode.ServiceUnavailable, answer), StringComparison.Ordinal);
            Assert.Equal(TimeSpan.FromMinutes(1), answer.Headers.RetryAfter?.Delta);
        }
    }

    [Fact]
    public async Task Requests_TooMany_AreRefusedAsAProblem()
    {
        await using var host = await GardenHost.StartAsync(linksPerMinute: 1);
        using var program = host.Program();
        List<HttpResponseMessage> answers = [];
        for (var asked = 0; asked < 21; asked++) answers.Add(await program.GetAsync("gardens", Cancellation));
        Assert.All(answers.SkipLast(1), answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
        Assert.Contains("Retry-After", await ApiCaller.ProblemAsync(HttpStatusCode.TooManyRequests, answers[^1]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gate_DiskDoesNotTakeIt_SaysThatItMayNotBeKept()
    {
        var context = new DefaultHttpContext { RequestServices = new ServiceCollection().AddLogging().BuildServiceProvider() };
        context.Response.Body = new MemoryStream();
        context.SetEndpoint(new(null, new(new AllowAnonymousAttribute()), "any"));
        var gate = new ApiGate(null!, null!, NullLogger<ApiGate>.Instance);
        await gate.PassAsync(context, _ => throw new StoreUnavailableException("full", new IOException("full")));
        context.Response.Body.Position = 0;
        var problem = await JsonNode.ParseAsync(context.Response.Body, cancellationToken: Cancellation);
        Assert.Equal((503, "application/problem+json"), (context.Response.StatusCode, context.Response.ContentType));
        Assert.Contains("Send it again", (string)problem!["detail"]!, StringComparison.Ordinal);
    }

    private static async Task<HttpClient> ProgramAsync(GardenHost host, string email)
    {
        using var browser = await host.EnterAsync(email);
        return host.Program(await ApiCaller.MakeKeyAsync(browser));
    }

    private static async Task ReachAsync(GardenHost host, Stage stage)
    {
        while (Latest(host).Standing.Stage.Stage != stage && host.Service.Now < Instant.FromUtc(2027, 9, 27, 0, 0)) await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Equal(stage, Latest(host).Standing.Stage.Stage);
    }

    private static Core.Decision Latest(GardenHost host) => host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id];

    private static string Body(string job, string answer) => new JsonObject { ["job"] = job, ["answer"] = answer }.ToJsonString();

    private static string Iso(Instant at) => at.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
