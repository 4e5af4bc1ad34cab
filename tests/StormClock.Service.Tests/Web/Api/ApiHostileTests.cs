using System.Net;
using System.Text;
using StormClock.Service.Store;
using StormClock.Service.Tests.Visits;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>Bodies that are not what an address takes: refused whole, with the mend, and nothing is kept.</summary>
public class ApiHostileTests(ApiHost host) : IClassFixture<ApiHost>
{
    private const string Answer = "gardens/tern-hook/jobs/answer";
    private const string Outcome = "gardens/tern-hook/after/outcome";

    private static string Job => GardenHost.Garden.Jobs.First().Id;

    private HttpClient Keeper => host.Program("keeper");

    public static TheoryData<string, string> Bodies => new()
    {
        { "nothing", "" },
        { "space", "   " },
        { "null", "null" },
        { "not JSON", "job=JOB&answer=done" },
        { "XML", "<answer/>" },
        { "cut off", """{"job":"JOB","answer":"do""" },
        { "two documents", """{"job":"JOB","answer":"done"}{"job":"JOB","answer":"done"}""" },
        { "a list", """[{"job":"JOB","answer":"done"}]""" },
        { "a text", "\"done\"" },
        { "a number", "1e999" },
        { "a remark", """{"job":"JOB",/* now */"answer":"done"}""" },
        { "a comma too many", """{"job":"JOB","answer":"done",}""" },
        { "no answer", """{"job":"JOB"}""" },
        { "no job", """{"answer":"done"}""" },
        { "null job", """{"job":null,"answer":"done"}""" },
        { "null answer", """{"job":"JOB","answer":null}""" },
        { "job a number", """{"job":1,"answer":"done"}""" },
        { "job a list", """{"job":["JOB"],"answer":"done"}""" },
        { "job an object", """{"job":{"id":"JOB"},"answer":"done"}""" },
        { "answer a number", """{"job":"JOB","answer":0}""" },
        { "answer true", """{"job":"JOB","answer":true}""" },
        { "answer a number as text", """{"job":"JOB","answer":"0"}""" },
        { "no word of ours", """{"job":"JOB","answer":"burn"}""" },
        { "another case", """{"job":"JOB","answer":"Done"}""" },
        { "two words", """{"job":"JOB","answer":"done, later"}""" },
        { "the name in code", """{"job":"JOB","answer":"NoTime"}""" },
        { "empty word", """{"job":"JOB","answer":""}""" },
        { "another case of a member", """{"Job":"JOB","answer":"done"}""" },
        { "an unknown member", """{"job":"JOB","answer":"done","by":"gardener"}""" },
        { "the same member twice", """{"job":"JOB","job":"JOB","answer":"done"}""" },
        { "a type's name", """{"$type":"System.IO.FileInfo","job":"JOB","answer":"done"}""" },
        { "half a character", """{"job":"\ud800","answer":"\udfff"}""" },
        { "deep", $$"""{"job":"JOB","answer":"done","x":{{new string('[', 5000)}}{{new string(']', 5000)}}}""" },
        { "deep objects", string.Concat(Enumerable.Repeat("{\"job\":", 1500)) + "1" + new string('}', 1500) },
    };

    [Theory, MemberData(nameof(Bodies))]
    public async Task Answer_OfAnotherShape_IsRefusedWhole(string what, string body)
    {
        var detail = await ApiCaller.ProblemAsync(HttpStatusCode.BadRequest, await ApiCaller.SendAsync(Keeper, Answer, body.Replace("JOB", Job, StringComparison.Ordinal)));
        Assert.True(detail.Contains("take_back", StringComparison.Ordinal) && detail.Length < 400, $"{what}: {detail}");
        Assert.DoesNotContain("StormClock.", detail, StringComparison.Ordinal);
        AssertNothingKept();
    }

    [Theory]
    [InlineData("""{"item":"fern-baskets","outcome":"held","note":5}""")]
    [InlineData("""{"item":"fern-baskets","outcome":"eaten"}""")]
    [InlineData("""{"item":"fern-baskets","outcome":"NotDone"}""")]
    [InlineData("""{"outcome":"held"}""")]
    public async Task Outcome_OfAnotherShape_IsRefusedWhole(string body) =>
        Assert.Contains("made_worse", await ApiCaller.ProblemAsync(HttpStatusCode.BadRequest, await ApiCaller.SendAsync(Keeper, Outcome, body)), StringComparison.Ordinal);

    [Fact]
    public async Task Outcome_WithALongNote_IsRefusedAndNotCut()
    {
        var body = $$"""{"item":"fern-baskets","outcome":"held","note":"{{new string('x', 501)}}"}""";
        Assert.Contains("500", await ApiCaller.ProblemAsync(HttpStatusCode.BadRequest, await ApiCaller.SendAsync(Keeper, Outcome, body)), StringComparison.Ordinal);
    }

    /// <summary>No bytes of UTF-8 (RFC 3629, section 3).</summary>
    [Fact]
    public async Task Answer_NotInUtf8_IsRefused()
    {
        using var content = new ByteArrayContent([.. "{\"job\":\""u8, 0xC0, 0xAF, 0xFF, .. "\",\"answer\":\"done\"}"u8]);
        content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
        var answer = await Keeper.PostAsync(Answer, content, TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.NotFound, $"{answer.StatusCode}");
        AssertNothingKept();
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("text/json")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data; boundary=x")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("application/problem+json")]
    [InlineData("application/json, text/plain")]
    [InlineData("json")]
    [InlineData(null)]
    public async Task Answer_OfAnotherType_IsNotRead(string? type)
    {
        var detail = await ApiCaller.ProblemAsync(HttpStatusCode.UnsupportedMediaType, await ApiCaller.SendAsync(Keeper, Answer, $$"""{"job":"{{Job}}","answer":"done"}""", type));
        Assert.Contains("application/json", detail, StringComparison.Ordinal);
        AssertNothingKept();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Answer_TooLarge_IsNotReadToItsEnd(bool chunked)
    {
        var bytes = Encoding.UTF8.GetBytes($$"""{"job":"{{new string('x', 20_000)}}","answer":"done"}""");
        using HttpContent content = chunked ? new StreamContent(new Unmeasured(bytes)) : new ByteArrayContent(bytes);
        content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
        Assert.Contains("16384", await ApiCaller.ProblemAsync(HttpStatusCode.RequestEntityTooLarge, await Keeper.PostAsync(Answer, content, TestContext.Current.CancellationToken)), StringComparison.Ordinal);
        AssertNothingKept();
    }

    [Theory]
    [InlineData("Basic Z2FyZGVuZXI6cGFzcw==")]
    [InlineData("Bearer")]
    [InlineData("Bearer ")]
    [InlineData("Bearer a b c")]
    [InlineData("stormclock_AAAA")]
    [InlineData("Bearer stormclock_AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task Key_NoneOfOurs_OpensNothing(string header)
    {
        using var program = host.Host.Program();
        program.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", header);
        var answer = await program.GetAsync("gardens", TestContext.Current.CancellationToken);
        await ApiCaller.ProblemAsync(HttpStatusCode.Unauthorized, answer);
        Assert.Equal("Bearer", Assert.Single(answer.Headers.WwwAuthenticate).Scheme);
    }

    private void AssertNothingKept() =>
        Assert.Empty(host.Host.Service.Store.Read(reader => JobStates.OfEpisode(reader, GardenHost.Garden.Id, host.Decision.Standing.Stage.EpisodeId!)));

    /// <summary>Bytes whose number is not known beforehand.</summary>
    private sealed class Unmeasured(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }
}
