using System.Net;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Books;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Desk;
using StormClock.Service.Store;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

/// <summary>The pages for subscribing devices, over a real store and the sample garden.</summary>
internal sealed partial class PushPagesHost : IAsyncDisposable
{
    private readonly TempFolder data;
    private readonly WebApplication app;

    private PushPagesHost(TempFolder data, WebApplication app, StormStore store)
    {
        this.data = data;
        this.app = app;
        Store = store;
        Client = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() }) { BaseAddress = new(app.Urls.Single()) };
    }

    public static string Page { get; } = Link("ines");

    public StormStore Store { get; }

    public HttpClient Client { get; }

    public IReadOnlyList<PushSubscription> Devices => Store.Read(reader => Subscriptions.OfGarden(reader, "quay"));

    public static async Task<PushPagesHost> StartAsync(bool allowLoopback = false)
    {
        var data = new TempFolder();
        var store = StormStore.Open(data.Path);
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = data.Path });
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddSingleton<IJobBook>(new FakeBook());
        builder.Services.AddSingleton<IClock>(new TestClock(QuayEnd.Now));
        builder.Services.AddSingleton(new AckKeyRing([QuayEnd.Key]));
        builder.Services.AddSingleton(new PushDesk(
            store, new GardenShelf([GardenReader.Read(SampleBook.Good, "quay").Value!]), new VapidKeys(ECDsa.Create(ECCurve.NamedCurves.nistP256)), allowLoopback));
        builder.Services.AddSingleton(provider => new Doorkeeper(
            provider.GetRequiredService<PagesSettings>(), new PasscodeFile(data.File(PasscodeFile.Name)), (_, _) => null, provider.GetRequiredService<IClock>()));
        builder.Services.AddStormPages(new PagesSettings(data.Path, new("https://garden.example"), 1_000_000));
        var app = builder.Build();
        app.UseStormPages();
        app.MapStormPages();
        app.MapPushPages();
        await app.StartAsync(TestContext.Current.CancellationToken);
        return new(data, app, store);
    }

    public static string Link(string person, AckPurpose purpose = AckPurpose.Push, double expiresHours = 24) =>
        "/p/" + new AckToken(purpose, "quay", "", person, "", QuayEnd.Hours(expiresHours)).Sign(QuayEnd.Key);

    public Task<HttpResponseMessage> GetAsync(string path) => Client.GetAsync(path, TestContext.Current.CancellationToken);

    public async Task<string> ReadAsync(string path) => await (await GetAsync(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    /// <summary>Sends the page's form with its hidden field, as the script (or the button alone) would.</summary>
    public async Task<HttpResponseMessage> PostAsync(string page, params (string Name, string Value)[] fields)
    {
        var hidden = HiddenField().Match(await ReadAsync(page)).Groups[1].Value;
        var form = fields.ToDictionary(field => field.Name, field => field.Value);
        form["__RequestVerificationToken"] = hidden;
        return await Client.PostAsync(page, new FormUrlEncodedContent(form), TestContext.Current.CancellationToken);
    }

    public Task<HttpResponseMessage> SubscribeAsync(string page, string endpoint, PushKeys keys, string name = "my phone") =>
        PostAsync(page, ("endpoint", endpoint), ("p256dh", keys.PublicKey), ("auth", keys.Secret), ("name", name));

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await app.DisposeAsync();
        Store.Dispose();
        data.Dispose();
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();
}
