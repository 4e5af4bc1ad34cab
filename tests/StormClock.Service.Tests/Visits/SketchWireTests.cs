using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using SkiaSharp;
using StormClock.Service.Plots;
using StormClock.Service.Tests.Photos;

namespace StormClock.Service.Tests.Visits;

/// <summary>What goes over the wire where a sketch lies below the drawing: its photo once, and pages that stay small.</summary>
public sealed partial class SketchWireTests : IAsyncLifetime
{
    /// <summary>Agreed for every page, without its photos (C).</summary>
    private const int MostBytes = 60 * 1024;

    private const string Map = "g/tern-hook/plot-map";

    private GardenHost host = null!;
    private HttpClient browser = null!;

    public async ValueTask InitializeAsync()
    {
        host = await GardenHost.StartAsync();
        browser = host.NewBrowser();
        using var form = new MultipartFormDataContent
        {
            { new StringContent(HiddenField().Match(await GardenHost.ReadAsync(browser, Map)).Groups[1].Value), "__RequestVerificationToken" },
            { new StringContent("s"), "once" },
            { new StringContent("house"), "site" },
            { new StringContent("24"), "width" },
            { new ByteArrayContent(DrawnPictures.OfNoise(1600, 1200, SKEncodedImageFormat.Jpeg, 30)), "photo", "sketch.jpg" },
        };
        Assert.Equal(HttpStatusCode.SeeOther, (await browser.PostAsync($"{Map}/sketch", form, TestContext.Current.CancellationToken)).StatusCode);
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await host.DisposeAsync();
    }

    /// <summary>The page, and all that it shows, as a browser fetches it that keeps what it may.</summary>
    [Fact]
    public async Task Placing_SecondPage_SendsTheSketchNoMore()
    {
        var first = await FetchAsync($"{Map}?place=area/porch", []);
        var second = await FetchAsync($"{Map}?place=area/gap", first.Keeps);
        TestContext.Current.SendDiagnosticMessage("first page {0} bytes, second {1}", first.Bytes, second.Bytes);
        Assert.True(second.Bytes < MostBytes, string.Create(CultureInfo.InvariantCulture, $"{second.Bytes} bytes for the second page, {first.Bytes} for the first"));
        Assert.Single(first.Keeps, kept => kept.Key.Contains("/photo/", StringComparison.Ordinal));
    }

    /// <summary>A browser that asks again, such as after a day or when the page is loaded anew, is told that it is the same.</summary>
    [Fact]
    public async Task Sketch_AskedForAgain_IsNotSentAgain()
    {
        var address = $"g/tern-hook/photo/{PhotoName().Match(await GardenHost.ReadAsync(browser, Map)).Groups[1].Value}";
        using var first = await browser.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.True(first.Headers.CacheControl is { Private: true, MaxAge: { TotalDays: >= 1 } });
        var again = await browser.SendAsync(Asking(address, first.Headers.ETag!), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        Assert.Empty(await again.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.OK, (await browser.SendAsync(Asking(address, new("\"other\"")), TestContext.Current.CancellationToken)).StatusCode);
        Assert.NotEqual(first.Headers.ETag, (await browser.GetAsync($"{address}/small", TestContext.Current.CancellationToken)).Headers.ETag);
    }

    /// <summary>On the drawing the sketch begins where the grid does.</summary>
    [Fact]
    public async Task Sketch_BelowTheDrawing_BeginsWhereTheGridDoes() =>
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"left: {PlotScale.LeftPx}px; top: {PlotScale.TopPx}px;"), await GardenHost.ReadAsync(browser, Service.Web.Stylesheet.Name), StringComparison.Ordinal);

    private static HttpRequestMessage Asking(string address, EntityTagHeaderValue tag) => new(HttpMethod.Get, address) { Headers = { IfNoneMatch = { tag } } };

    /// <param name="kept">Addresses that need not be asked for again.</param>
    private async Task<(long Bytes, Dictionary<string, bool> Keeps)> FetchAsync(string path, Dictionary<string, bool> kept)
    {
        var keeps = new Dictionary<string, bool>(kept);
        using var page = await PackedAsync(path);
        var bytes = (await page.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).LongLength;
        foreach (var address in Shown().Matches(WebUtility.HtmlDecode(await GardenHost.ReadAsync(browser, path))).Select(shown => new Uri(page.RequestMessage!.RequestUri!, shown.Groups[1].Value).PathAndQuery).Distinct())
        {
            if (keeps.ContainsKey(address)) continue;
            using var picture = await PackedAsync(address);
            Assert.True(picture.IsSuccessStatusCode, address);
            bytes += (await picture.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).LongLength;
            if (picture.Headers.CacheControl is { NoStore: false, NoCache: false, MaxAge: { TotalMinutes: > 0 } }) keeps[address] = true;
        }

        return (bytes, keeps);
    }

    private Task<HttpResponseMessage> PackedAsync(string path) =>
        browser.SendAsync(new(HttpMethod.Get, path) { Headers = { AcceptEncoding = { new("gzip"), new("br") } } }, TestContext.Current.CancellationToken);

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex("(?:src|<image [^>]*href)=\"([^\"]+)\"")]
    private static partial Regex Shown();

    [GeneratedRegex("photo/([0-9a-f]{32})")]
    private static partial Regex PhotoName();
}
