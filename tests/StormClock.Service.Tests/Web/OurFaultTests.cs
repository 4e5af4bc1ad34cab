using System.Collections.Concurrent;
using System.Net;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Logging;

namespace StormClock.Service.Tests.Web;

/// <summary>What is shown when something fails in here: addresses that only these tests have fail in several ways.</summary>
public sealed class OurFaultTests : IAsyncLifetime
{
    private const string Secret = "hushed-words /srv/inside";

    private readonly Heard log = new();
    private PagesHost host = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => host = await PagesHost.StartAsync(log: log, more: app =>
    {
        app.MapMethods("/g/{garden}/fails/{token}", [HttpMethods.Get, HttpMethods.Head, HttpMethods.Post], IResult (HttpContext context) => throw new InvalidOperationException(Secret));
        app.MapGet("/half", (HttpContext context) => context.Response.WriteAsync("half of it", context.RequestAborted).ContinueWith(_ => throw new InvalidOperationException(Secret), TaskScheduler.Default));
        app.MapGet("/drawn", () => new RazorComponentResult<HalfDrawn>());
        app.MapGet("/disk", IResult () => throw new IOException(Secret));
        app.MapGet("/asked-badly", IResult () => throw new BadHttpRequestException(Secret, StatusCodes.Status413PayloadTooLarge));
        app.MapGet("/api/v1/fails", IResult () => throw new InvalidOperationException(Secret));
    });

    public ValueTask DisposeAsync() => host.DisposeAsync();

    [Theory]
    [InlineData("/g/quay/fails/secret-token", "../../../")]
    [InlineData("/drawn", "")]
    [InlineData("/disk", "")]
    public async Task Page_ThatFails_SaysSoAndNothingOfTheFault(string path, string up)
    {
        var answer = await host.GetAsync(path);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancellation));
        Assert.Equal((HttpStatusCode.InternalServerError, "text/html"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.Contains("a fault of this program, not of what you did", page, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed unless the next look shows it", page, StringComparison.Ordinal);
        Assert.Contains("Official orders do not wait for this page", page, StringComparison.Ordinal);
        Assert.Contains("the last letter", page, StringComparison.Ordinal);
        Assert.Contains($"href=\"{(up.Length > 0 ? up : ".")}\"", page, StringComparison.Ordinal);
        Assert.Contains($"href=\"{up}storm.css\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("hushed", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", page, StringComparison.Ordinal);
        Assert.DoesNotContain("half drawn", page, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_ThatFails_KeepsTheHeadersOfEveryAnswer()
    {
        var (good, bad) = (await host.GetAsync("/"), await host.GetAsync("/drawn"));
        foreach (var name in new[] { "Content-Security-Policy", "X-Content-Type-Options", "X-Frame-Options", "Referrer-Policy", "Cache-Control" })
            Assert.Equal(good.Headers.GetValues(name), bad.Headers.GetValues(name));
    }

    [Fact]
    public async Task Form_ThatFails_IsAnsweredTheSame()
    {
        var answer = await host.Client.PostAsync("/g/quay/fails/x", new FormUrlEncodedContent([new("answer", "done")]), Cancellation);
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains("fault of this program", await answer.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_InSpanish_SaysTheSame()
    {
        host.Client.DefaultRequestHeaders.AcceptLanguage.ParseAdd("es-PR, en;q=0.5");
        var page = WebUtility.HtmlDecode(await host.ReadAsync("/drawn"));
        Assert.Contains("lang=\"es\"", page, StringComparison.Ordinal);
        Assert.Contains("Es un fallo de este programa", page, StringComparison.Ordinal);
        Assert.Contains("órdenes oficiales no esperan", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Api_ThatFails_AnswersAProblem()
    {
        var answer = await host.GetAsync("/api/v1/fails");
        var text = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.Equal((HttpStatusCode.InternalServerError, "application/problem+json"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        var problem = JsonNode.Parse(text)!;
        Assert.Equal(500, (int)problem["status"]!);
        Assert.Contains("no fault of the request", (string)problem["detail"]!, StringComparison.Ordinal);
        Assert.DoesNotContain("hushed", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
    }

    /// <summary>The keeper's log says all of it, but for what stands in the address.</summary>
    [Fact]
    public async Task Page_ThatFails_IsLoggedWithoutTheSecretOfItsAddress()
    {
        await host.GetAsync("/g/quay/fails/secret-token");
        var line = Assert.Single(log.Lines, line => line.Trouble is InvalidOperationException);
        Assert.Equal((LogLevel.Error, "GET /g/{garden}/fails/{token} failed", Secret), (line.Level, line.Text, line.Trouble!.Message));
    }

    /// <summary>A page half sent cannot be taken back: the connection breaks, so that nobody takes it for whole.</summary>
    [Fact]
    public async Task Page_HalfSent_BreaksOff() =>
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => host.Client.GetStringAsync("/half", Cancellation));

    [Fact]
    public async Task Request_ThatAskedBadly_IsNoFaultOfOurs()
    {
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await host.GetAsync("/asked-badly")).StatusCode);
        Assert.DoesNotContain(log.Lines, line => line.Text.EndsWith(" failed", StringComparison.Ordinal));
    }

    /// <summary>Fails when part of it is drawn already.</summary>
    private sealed class HalfDrawn : ComponentBase
    {
        protected override void BuildRenderTree(RenderTreeBuilder builder)
        {
            builder.AddMarkupContent(0, "<p>half drawn</p>");
            builder.OpenComponent<Breaking>(1);
            builder.CloseComponent();
        }
    }

    private sealed class Breaking : ComponentBase
    {
        protected override async Task OnInitializedAsync()
        {
            await Task.Yield();
            throw new InvalidOperationException(Secret);
        }
    }

    private sealed class Heard : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<(LogLevel Level, string Text, Exception? Trouble)> Lines { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Warning;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Enqueue((logLevel, formatter(state, exception), exception));

        public void Dispose()
        {
        }
    }
}
