using System.Net;
using StormClock.Service.Tests.Visits;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>Who may ask what (common practice, no source): as on the pages.</summary>
public class ApiPermissionTests(ApiHost host) : IClassFixture<ApiHost>
{
    private static readonly string[] People = ["stranger", "helper", "gardener", "keeper"];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("gardens", 401, 200, 200, 200)]
    [InlineData("gardens/tern-hook/now", 401, 200, 200, 200)]
    [InlineData("gardens/tern-hook/jobs", 401, 200, 200, 200)]
    [InlineData("gardens/tern-hook/jobs?who=helper", 401, 200, 200, 200)]
    [InlineData("gardens/tern-hook/after", 401, 200, 200, 200)]
    [InlineData("gardens/tern-hook/plan", 401, 404, 200, 200)]
    [InlineData("gardens/tern-hook/items", 401, 404, 200, 200)]
    [InlineData("gardens/tern-hook/storms", 401, 404, 200, 200)]
    [InlineData("gardens/no-such-garden/now", 401, 404, 404, 404)]
    [InlineData("gardens/no-such-garden/plan", 401, 404, 404, 404)]
    [InlineData("gardens/tern-hook", 401, 404, 404, 404)]
    [InlineData("nothing/here", 401, 404, 404, 404)]
    [InlineData("../v2/gardens", 401, 404, 404, 404)]
    [InlineData("openapi.json", 200, 200, 200, 200)]
    public async Task Get_ByEach_IsAnswered(string path, params int[] expected)
    {
        foreach (var (who, status) in People.Zip(expected))
        {
            var answer = await host.Program(who).GetAsync(path, Cancellation);
            if (status == 200) Assert.True(answer.IsSuccessStatusCode, $"{who}: {answer.StatusCode}");
            else await ApiCaller.ProblemAsync((HttpStatusCode)status, answer);
            Assert.Equal(status == 401 ? ["Bearer realm=\"stormclock\""] : [], answer.Headers.WwwAuthenticate.Select(challenge => challenge.ToString()));
        }
    }

    /// <summary>Of things that are there, but not now, or not there at all, so that nothing is changed.</summary>
    [Theory]
    [InlineData("jobs/answer", """{"job":"no-such/job","answer":"done"}""", 401, 404, 404, 404)]
    [InlineData("in", """{"person":"helper"}""", 401, 409, 409, 409)]
    [InlineData("after/outcome", """{"item":"fern-baskets","outcome":"held"}""", 401, 409, 409, 409)]
    [InlineData("now", "{}", 401, 405, 405, 405)]
    [InlineData("nothing", "{}", 401, 404, 404, 404)]
    public async Task Post_ByEach_IsAnswered(string path, string body, params int[] expected)
    {
        foreach (var (who, status) in People.Zip(expected)) await ApiCaller.ProblemAsync((HttpStatusCode)status, await ApiCaller.SendAsync(host.Program(who), $"gardens/tern-hook/{path}", body));
        foreach (var who in People.Skip(1)) await ApiCaller.ProblemAsync(HttpStatusCode.NotFound, await ApiCaller.SendAsync(host.Program(who), $"gardens/no-such-garden/{(path == "now" ? "in" : path)}", body));
    }

    [Theory]
    [InlineData("DELETE", "gardens")]
    [InlineData("PUT", "gardens/tern-hook/jobs/answer")]
    [InlineData("PATCH", "gardens/tern-hook/now")]
    public async Task OtherMethod_ByTheKeeper_IsRefusedWithWhatIsTaken(string method, string path)
    {
        using var request = new HttpRequestMessage(new(method), path);
        var detail = await ApiCaller.ProblemAsync(HttpStatusCode.MethodNotAllowed, await host.Program("keeper").SendAsync(request, Cancellation));
        Assert.Contains(path.EndsWith("answer", StringComparison.Ordinal) ? "POST" : "GET", detail, StringComparison.Ordinal);
    }

    /// <summary>A page elsewhere can make a browser send a form, with its cookies, but no key.</summary>
    [Fact]
    public async Task Cookie_OfASignedInBrowser_OpensWhatReadsAndNothingElse()
    {
        using var browser = await host.Host.EnterByPasscodeAsync();
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(browser, "api/v1/gardens/tern-hook/now"));
        var refused = await ApiCaller.SendAsync(browser, "api/v1/gardens/tern-hook/jobs/answer", """{"job":"fern-baskets/move","answer":"done"}""");
        Assert.Contains("key", await ApiCaller.ProblemAsync(HttpStatusCode.Unauthorized, refused), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, (await ApiCaller.SendAsync(browser, "api/v1/gardens/tern-hook/jobs/answer", "answer=done", "application/x-www-form-urlencoded")).StatusCode);

        // A wrong key is not made good by the cookie.
        browser.DefaultRequestHeaders.Add("Authorization", "Bearer stormclock_wrong");
        Assert.Equal(HttpStatusCode.Unauthorized, await GardenHost.StatusAsync(browser, "api/v1/gardens/tern-hook/now"));
    }
}
