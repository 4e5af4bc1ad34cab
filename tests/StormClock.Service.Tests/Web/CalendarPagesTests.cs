using System.Net;
using System.Net.Http.Headers;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

public class CalendarPagesTests
{
    private const string Text = "BEGIN:VCALENDAR\r\nX:größe\r\nEND:VCALENDAR\r\n";

    private static readonly string Ours = "/" + CalendarLinks.Path("quay-end", "ada", QuayEnd.Key);

    private static string Token => Ours["/c/".Length..^".ics".Length];

    /// <summary>Addresses that are not exactly one of ours.</summary>
    public static TheoryData<string, string> Foreign => new()
    {
        { "cut", $"/c/{Token[..^1]}.ics" },
        { "lengthened", $"/c/{Token}A.ics" },
        { "without its ending", $"/c/{Token}" },
        { "a job's link", $"/c/{PagesHost.Link()["/j/".Length..]}.ics" },
        { "an indoors link", $"/c/{PagesHost.Link(AckPurpose.Indoors, "")["/j/".Length..]}.ics" },
        { "run out", $"/c/{Signed(QuayEnd.Key, QuayEnd.Hours(-1))}.ics" },
        { "signed with a key taken away", "/" + CalendarLinks.Path("quay-end", "ada", new AckKey("k0", new byte[32])) },
        { "signed with another key of the same name", "/" + CalendarLinks.Path("quay-end", "ada", new AckKey("k1", new byte[32])) },
        { "a person no longer in the book", "/" + CalendarLinks.Path("quay-end", "gone", QuayEnd.Key) },
        { "no token", "/c/.ics" },
        { "nothing", "/c/" },
    };

    [Fact]
    public async Task Get_Ours_IsThatPersonsCalendar()
    {
        await using var host = await StartAsync();
        var answer = await host.GetAsync(Ours);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/calendar; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal(Text, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal("no-cache, private", string.Join(", ", answer.Headers.CacheControl!.ToString().Split(", ").Order()));
        Assert.NotNull(answer.Headers.ETag);
    }

    [Fact]
    public async Task Get_NothingNew_IsAnsweredWithoutTheContent()
    {
        await using var host = await StartAsync();
        var tag = (await host.GetAsync(Ours)).Headers.ETag!;
        Assert.Equal(HttpStatusCode.NotModified, (await GetAsync(host, tag)).StatusCode);
        host.Book.Calendar = _ => Text + "\r\n";
        Assert.Equal(HttpStatusCode.OK, (await GetAsync(host, tag)).StatusCode);
    }

    [Theory, MemberData(nameof(Foreign))]
    public async Task Get_AnythingElse_IsNotFoundAndTellsNothing(string _, string path)
    {
        await using var host = await StartAsync();
        var answer = await host.GetAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("POST")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    [InlineData("PROPFIND")]
    public async Task Request_OtherThanReading_IsRefused(string method)
    {
        await using var host = await StartAsync();
        using var request = new HttpRequestMessage(new HttpMethod(method), Ours);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await host.Client.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Token_OfACalendar_OpensNoLinkPageAndPressesNothing()
    {
        await using var host = await StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await host.GetAsync($"/j/{Token}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await PagesHost.PostAsync(host.Client, $"/j/{Token}", "done", "x")).StatusCode);
        Assert.Empty(host.Book.Answers);
    }

    [Fact]
    public void Path_Forever_OutlivesStormsAndIsTheSameEachTime()
    {
        Assert.Equal(Ours, "/" + CalendarLinks.Path("quay-end", "ada", QuayEnd.Key));
        Assert.Equal(AckVerdict.Good, AckToken.Read(Token, [QuayEnd.Key], QuayEnd.Now + Duration.FromDays(3650)).Verdict);
    }

    /// <summary>Ten thousand forgeries at the door: bits turned, parts swapped between two good ones, other names under the old signature, noise.</summary>
    [Fact]
    public async Task Get_TenThousandForgeries_NoneIsTaken()
    {
        await using var host = await StartAsync(requestsPerMinute: 20_000);
        var other = CalendarLinks.Path("quay-end", "bo", QuayEnd.Key)["c/".Length..^".ics".Length];
        var random = new Random(1855);
        var taken = 0;
        host.Book.Calendar = _ => Interlocked.Increment(ref taken) > 0 ? Text : null;
        var forged = Enumerable.Range(0, 10_000).Select(_ => Forge(random, Token, other)).ToList();
        var answers = await Task.WhenAll(forged.Chunk(2500).Select(async part =>
        {
            var codes = new List<HttpStatusCode>();
            foreach (var token in part) codes.Add((await host.GetAsync($"/c/{token}.ics")).StatusCode);
            return codes;
        }));
        Assert.Equal(10_000, answers.Sum(codes => codes.Count));
        Assert.All(answers.SelectMany(codes => codes), code => Assert.Equal(HttpStatusCode.NotFound, code));
        Assert.Equal(0, taken);
        Assert.Equal(HttpStatusCode.OK, (await host.GetAsync(Ours)).StatusCode);
    }

    [Fact]
    public async Task Get_TooOften_IsHeldBack()
    {
        await using var host = await StartAsync(requestsPerMinute: 5);
        for (var i = 0; i < 5; i++) Assert.Equal(HttpStatusCode.OK, (await host.GetAsync(Ours)).StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await host.GetAsync(Ours)).StatusCode);
    }

    private static string Forge(Random random, string token, string other)
    {
        var bytes = System.Buffers.Text.Base64Url.DecodeFromChars(token);
        var others = System.Buffers.Text.Base64Url.DecodeFromChars(other);
        switch (random.Next(4))
        {
            case 0: bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8)); break;
            case 1: bytes = [.. bytes[..^32], .. others[^32..]]; break;
            case 2: bytes = [.. others[..^32], .. bytes[^32..]]; bytes[random.Next(bytes.Length)] ^= (byte)random.Next(256); break;
            default: random.NextBytes(bytes.AsSpan(random.Next(bytes.Length)..)); break;
        }

        return System.Buffers.Text.Base64Url.EncodeToString(bytes);
    }

    private static string Signed(AckKey key, Instant expires) => new AckToken(AckPurpose.Calendar, "quay-end", "", "ada", "", expires).Sign(key);

    private static Task<HttpResponseMessage> GetAsync(PagesHost host, EntityTagHeaderValue tag)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, Ours);
        request.Headers.IfNoneMatch.Add(tag);
        return host.Client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static async Task<PagesHost> StartAsync(int requestsPerMinute = 10_000)
    {
        var host = await PagesHost.StartAsync(requestsPerMinute);
        host.Book.Calendar = token => (token.GardenId, token.PersonId) == ("quay-end", "ada") ? Text : null;
        return host;
    }
}
