using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using StormClock.Core.Garden;
using StormClock.Core.Worth;
using StormClock.Service.Commands;
using StormClock.Service.Tests.Visits;
using StormClock.Service.Visits;
using StormClock.Service.Web.Api.Shapes;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>Each address that reads, against what was decided.</summary>
public class ApiReadTests(ApiHost host) : IClassFixture<ApiHost>
{
    private static string Garden => $"gardens/{GardenHost.Garden.Id}";

    private HttpClient Gardener => host.Program("gardener");

    [Fact]
    public async Task Gardens_OfTheCaller_HaveNameStageAndLeave()
    {
        var garden = Assert.Single((await ApiCaller.ReadAsync(Gardener, "gardens"))["gardens"]!.AsArray())!;
        Assert.Equal(
            ("tern-hook", "Tern Hook (invented)", Token(host.Decision.Standing.Stage.Stage), host.Decision.Leave),
            ((string)garden["id"]!, (string)garden["name"]!, (string)garden["stage"]!, (bool)garden["leave"]!));
    }

    [Fact]
    public async Task Now_WhileWorkIsPlanned_SaysStageReasonStopsAndSources()
    {
        var now = await ApiCaller.ReadAsync(Gardener, $"{Garden}/now");
        var stage = host.Decision.Standing.Stage;
        Assert.Equal((Token(stage.Stage), stage.EpisodeId, false), ((string)now["stage"]!, (string)now["episode"]!, (bool)now["workIsOver"]!));
        Assert.Contains(stage.Reason.Source, (string)now["reason"]!["sentence"]!, StringComparison.Ordinal);
        Assert.Equal(["sheet", "ladder", "saw", "carry", "ground"], now["workStops"]!.AsObject().Select(stop => stop.Key));
        Assert.All(Enum.GetValues<WorkClass>(), work => Assert.Equal(Iso(host.Decision.Plan!.WorkStops[work].Earliest), (string?)now["workStops"]![Token(work)]!["earliest"]));
        Assert.Equal(Iso(host.Decision.Plan!.WorkStops[WorkClass.Ground].Likely), (string?)now["workStops"]!["ground"]!["likely"]);
        Assert.Equal("2027-09-20T11:00:00Z", (string)now["now"]!);
        Assert.All(now["sources"]!.AsArray(), source => Assert.False((bool)source!["deaf"]!));
        Assert.NotEmpty(now["sources"]!.AsArray());
        Assert.Contains("Official orders", (string)now["cautions"]![0]!, StringComparison.Ordinal);
        Assert.Empty(now["indoors"]!.AsArray());
    }

    [Fact]
    public async Task Jobs_OfEverybody_AreThePlanInItsOrderWithWhatIsLeftOut()
    {
        var jobs = await ApiCaller.ReadAsync(Gardener, $"{Garden}/jobs");
        var plan = host.Decision.Plan!;
        Assert.Equal(
            plan.Jobs.Select(job => (job.Job.Id, string.Join(' ', job.People), Iso(job.Start), Iso(job.End), Iso(job.StartBy), job.Job.Minutes)),
            jobs["planned"]!.AsArray().Select(job => (
                (string)job!["id"]!, string.Join(' ', job["people"]!.AsArray().Select(id => (string)id!)), (string?)job["start"], (string?)job["end"], (string?)job["startBy"], (int)job["minutes"]!)));
        Assert.Equal(
            plan.LeftOut.Concat(plan.BetterLeft).Select(left => (left.Job.Id, left.Fallback)),
            jobs["leftOut"]!.AsArray().Select(job => ((string)job!["id"]!, (string?)job["fallback"])));
        Assert.All(jobs["leftOut"]!.AsArray(), job => Assert.NotEmpty((string)job!["why"]!));
        Assert.NotEmpty(jobs["leftOut"]!.AsArray());
        Assert.Empty(jobs["answered"]!.AsArray());
        Assert.Empty(jobs["open"]!.AsArray());
        Assert.NotEmpty(jobs["cautions"]!.AsArray());
    }

    [Fact]
    public async Task Jobs_OneJob_IsAsTheBookHasIt()
    {
        var jobs = await ApiCaller.ReadAsync(Gardener, $"{Garden}/jobs");
        var planned = host.Decision.Plan!.Jobs.First(job => job.Job.Materials.Count > 0);
        var (job, item) = (planned.Job, GardenHost.Garden.ItemOf(planned.Job));
        var shown = jobs["planned"]!.AsArray().Single(shown => (string)shown!["id"]! == job.Id)!;
        Assert.Equal(
            (item.Id, item.AreaId, GardenHost.Garden.AreaOf(item).SiteId, Token(job.Kind), Token(job.Class), job.StoreId, "open"),
            ((string)shown["item"]!, (string)shown["area"]!, (string)shown["site"]!, (string)shown["kind"]!, (string)shown["workClass"]!, (string?)shown["store"], (string)shown["progress"]!));
        Assert.Equal(
            job.Materials.Select(need => (need.Material, need.Quantity, need.Unit)),
            shown["bring"]!.AsArray().Select(need => ((string)need!["material"]!, (double)need["quantity"]!, (string)need["unit"]!)));
        Assert.Contains(item.Name, (string)shown["title"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jobs_ForOnePerson_AreTheirsAlone()
    {
        var theirs = host.Decision.Plan!.Jobs.Where(job => job.People.Contains(ApiHost.Helper.Id)).Select(job => job.Job.Id).ToList();
        Assert.NotEmpty(theirs);
        Assert.Equal(theirs, Ids(await ApiCaller.ReadAsync(Gardener, $"{Garden}/jobs?who={ApiHost.Helper.Id}")));
        var own = await ApiCaller.ReadAsync(host.Program("helper"), $"{Garden}/jobs");
        Assert.Equal(theirs, Ids(own));
        Assert.All(own["planned"]!.AsArray(), job => Assert.Equal([ApiHost.Helper.Id], job!["people"]!.AsArray().Select(id => (string)id!)));
        Assert.Empty(own["leftOut"]!.AsArray());

        static IEnumerable<string> Ids(JsonObject jobs) => jobs["planned"]!.AsArray().Select(job => (string)job!["id"]!);
    }

    [Theory]
    [InlineData("gardener", "nobody")]
    [InlineData("gardener", "")]
    [InlineData("helper", "gardener")]
    public async Task Jobs_ForSomebodyNotThereOrNotForTheCaller_AreRefused(string who, string asked) =>
        Assert.StartsWith("who:", await ApiCaller.ProblemAsync(HttpStatusCode.NotFound, await host.Program(who).GetAsync($"{Garden}/jobs?who={asked}", TestContext.Current.CancellationToken)), StringComparison.Ordinal);

    [Fact]
    public async Task Plan_Asked_IsWhatTheCommandPrints()
    {
        var printed = JsonSerializer.Serialize(PlanDocument.Of(GardenHost.Garden, host.Decision, host.Host.Service.Now), Json.Options);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(printed), await ApiCaller.ReadAsync(Gardener, $"{Garden}/plan")));
    }

    [Fact]
    public async Task Items_InAStorm_AreInTheOrderOfWorry()
    {
        var items = await ApiCaller.ReadAsync(Gardener, $"{Garden}/items");
        var worries = OrderOfWorry.Of(GardenHost.Garden);
        Assert.Equal(
            worries.Select(worry => (worry.Item.Id, worry.Item.Count, worry.Area.Id, worry.Gust10MMps is { } gust ? Math.Round(gust, 1) : (double?)null)),
            items["items"]!.AsArray().Select(item => ((string)item!["id"]!, (int)item["count"]!, (string)item["area"]!, (double?)item["failingGustMps"])));
        Assert.All(items["items"]!.AsArray().Where(item => item!["chance"] is not null), item => Assert.InRange((double)item!["chance"]!, 0, 1));
        Assert.Contains(items["items"]!.AsArray(), item => item!["chance"] is not null);
        Assert.Equal(GardenHost.Garden.Sites.Select(site => site.Id), items["peaks"]!.AsArray().Select(peak => (string)peak!["site"]!));
        Assert.All(items["peaks"]!.AsArray(), peak => Assert.True((double)peak!["lowMps"]! <= (double)peak["highMps"]!));
    }

    [Fact]
    public async Task Storms_WhileTheFirstIsUnderWay_AreThatOne()
    {
        var storm = Assert.Single((await ApiCaller.ReadAsync(Gardener, $"{Garden}/storms"))["storms"]!.AsArray())!;
        Assert.Equal((host.Decision.Standing.Stage.EpisodeId, "2027-09-20T11:00:00Z", (string?)null), ((string)storm["episode"]!, (string)storm["began"]!, (string?)storm["ended"]));
    }

    [Fact]
    public async Task After_BeforeTheWind_IsEmpty()
    {
        var after = await ApiCaller.ReadAsync(Gardener, $"{Garden}/after");
        Assert.Equal((0, 0, 0), (after["look"]!.AsArray().Count, after["undo"]!.AsArray().Count, after["found"]!.AsArray().Count));
    }

    /// <summary>A plan is still known when people must leave: none of it is told as work with a time, and no stop is.</summary>
    [Fact]
    public void Shapes_OnceTheTimeToLeaveHasCome_NameNoTimeForWork()
    {
        var now = host.Host.Service.Now;
        var visit = new GardenVisit(new(VisitorKind.Passcode), GardenHost.Garden, [GardenHost.Garden], host.Decision with { LeaveBy = now }, GardenRoom.Jobs, now);
        var jobs = ApiJobs.Of(visit, GardenWork.Of(visit.Book, visit.Decision, [], null), null);
        Assert.Equal((true, 0), (jobs.WorkIsOver, jobs.Planned.Count));
        Assert.Equal(host.Decision.Plan!.Jobs.Select(job => job.Job.Id), jobs.Open.Select(job => job.Id));
        Assert.All(jobs.Open, job => Assert.Equal((null, null, null, 0), (job.Start, job.End, job.StartBy, job.People.Count)));
        var told = ApiNow.Of(visit, [], []);
        Assert.Equal((true, true, now), (told.Leave, told.WorkIsOver, told.LeaveBy));
        Assert.Null(told.WorkStops);
    }

    private static string Token<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    private static string? Iso(Instant? at) => at?.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
