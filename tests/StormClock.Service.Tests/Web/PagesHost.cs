using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Visits;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

/// <summary>The pages on a real Kestrel on loopback, over a book that remembers what it was told.</summary>
internal sealed partial class PagesHost : IAsyncDisposable
{
    private readonly DirectoryInfo data;
    private readonly WebApplication app;

    private PagesHost(DirectoryInfo data, WebApplication app, FakeBook book)
    {
        this.data = data;
        this.app = app;
        Book = book;
        Address = new Uri(app.Urls.Single());
        Client = NewBrowser();
    }

    public FakeBook Book { get; }

    public Uri Address { get; }

    /// <summary>Keeps cookies as a browser does, and does not follow redirects.</summary>
    public HttpClient Client { get; }

    /// <param name="more">Addresses that only a test has.</param>
    /// <param name="log">Hears what is logged; null for nobody.</param>
    public static async Task<PagesHost> StartAsync(int linkRequestsPerMinute = 10_000, Uri? pagesAddress = null, DirectoryInfo? data = null, bool tests = false, Action<WebApplication>? more = null, ILoggerProvider? log = null)
    {
        data ??= Directory.CreateTempSubdirectory("stormclock-pages-");
        var book = new FakeBook();
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = data.FullName });
        builder.Logging.ClearProviders();
        if (log is not null) builder.Logging.AddProvider(log);
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddSingleton<IJobBook>(book);
        builder.Services.AddSingleton<IClock>(new StandingClock(QuayEnd.Now));
        builder.Services.AddSingleton(new AckKeyRing([QuayEnd.Key]));
        builder.Services.AddSingleton(provider => new Doorkeeper(
            provider.GetRequiredService<PagesSettings>(), new PasscodeFile(Path.Combine(data.FullName, PasscodeFile.Name)), (_, _) => null, provider.GetRequiredService<IClock>()));
        builder.Services.AddStormPages(new PagesSettings(data.FullName, pagesAddress, linkRequestsPerMinute, tests));
        var app = builder.Build();
        app.UseStormPages();
        app.MapStormPages();
        more?.Invoke(app);
        await app.StartAsync(TestContext.Current.CancellationToken);
        return new PagesHost(data, app, book);
    }

    public static string Link(AckPurpose purpose = AckPurpose.Job, string job = "lemon/weigh_down", double expiresHours = 24) =>
        "/j/" + new AckToken(purpose, "quay-end", "e1", "ada", job, QuayEnd.Hours(expiresHours)).Sign(QuayEnd.Key);

    public HttpClient NewBrowser() =>
        new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = Address };

    public Task<HttpResponseMessage> GetAsync(string path) => Client.GetAsync(path, TestContext.Current.CancellationToken);

    public async Task<string> ReadAsync(string path) => await (await GetAsync(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    /// <summary>Presses a button as a browser would: with the hidden field of the page that it shows.</summary>
    public async Task<HttpResponseMessage> PressAsync(string path, string answer) =>
        await PostAsync(Client, path, answer, HiddenField().Match(await ReadAsync(path)).Groups[1].Value);

    public static Task<HttpResponseMessage> PostAsync(HttpClient browser, string path, string answer, string? hidden, string field = "answer")
    {
        var fields = new Dictionary<string, string> { [field] = answer };
        if (hidden is not null) fields["__RequestVerificationToken"] = hidden;
        return browser.PostAsync(path, new FormUrlEncodedContent(fields), TestContext.Current.CancellationToken);
    }

    /// <summary>Stops the service as a restart does, leaving the data folder.</summary>
    public async Task<DirectoryInfo> StopAsync()
    {
        await app.StopAsync(TestContext.Current.CancellationToken);
        await app.DisposeAsync();
        return data;
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await app.DisposeAsync();
        if (data.Exists) data.Delete(recursive: true);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    private sealed class StandingClock(Instant now) : IClock
    {
        public Instant GetCurrentInstant() => now;
    }
}
