using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using StormClock.Service.Tests.Visits;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>Asks as another program would.</summary>
internal static partial class ApiCaller
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Makes a key on the page, as whoever the browser is.</summary>
    public static async Task<string> MakeKeyAsync(HttpClient browser, string name = "board in the shed")
    {
        var made = await GardenHost.PostAsync(browser, "in", "keys", ("name", name));
        var page = await made.Content.ReadAsStringAsync(Cancellation);
        var key = Shown().Match(page);
        Assert.True(key.Success, page);
        return key.Groups[1].Value;
    }

    /// <summary>A program with this key, or none; it knows no cookies.</summary>
    public static HttpClient Program(this GardenHost host, string? key = null)
    {
        var program = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new(host.Service.Address, "api/v1/") };
        if (key is not null) program.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        return program;
    }

    public static async Task<JsonObject> ReadAsync(HttpClient program, string path)
    {
        var answer = await program.GetAsync(path, Cancellation);
        var text = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{path}: {answer.StatusCode} {text}");
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        return JsonNode.Parse(text)!.AsObject();
    }

    public static Task<HttpResponseMessage> SendAsync(HttpClient program, string path, string body, string? type = "application/json")
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
        if (type is not null) content.Headers.TryAddWithoutValidation("Content-Type", type);
        return program.PostAsync(path, content, Cancellation);
    }

    /// <summary>What a taken body is answered with.</summary>
    public static async Task<JsonObject> TakenAsync(HttpClient program, string path, string body)
    {
        var answer = await SendAsync(program, path, body);
        var text = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{path}: {answer.StatusCode} {text}");
        return JsonNode.Parse(text)!.AsObject();
    }

    /// <summary>The detail of a refusal (RFC 9457, section 3.1): there, and in the form it must have.</summary>
    public static async Task<string> ProblemAsync(HttpStatusCode status, HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.True(answer.StatusCode == status, $"{answer.StatusCode}, not {status}: {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonNode.Parse(text)!.AsObject();
        Assert.Equal((int)status, (int)problem["status"]!);
        Assert.NotEmpty((string)problem["title"]!);
        Assert.NotEmpty((string)problem["detail"]!);
        return (string)problem["detail"]!;
    }

    [GeneratedRegex("<code>(stormclock_[A-Za-z0-9_-]{43})</code>")]
    private static partial Regex Shown();
}
