using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.Extensions.DependencyInjection;
using SkiaSharp;
using StormClock.Core.Garden;
using StormClock.Service.Photos;
using StormClock.Service.Store;
using StormClock.Service.Tests.Photos;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Tests.Visits;

/// <summary>Sketches and photos of things, sent and shown over the whole service.</summary>
public sealed partial class PhotoPagesTests : IAsyncLifetime
{
    private const string Map = "g/tern-hook/plot-map";

    private static readonly byte[] Photo = DrawnPictures.OfOneColour(800, 600, SKColors.Teal, SKEncodedImageFormat.Jpeg);

    private GardenHost host = null!;
    private HttpClient gardener = null!;

    private static Item Item => GardenHost.Garden.Items[0];

    private static string Page => $"g/tern-hook/walk/{Item.AreaId}/{Item.Id}";

    private PhotoDesk Photos => host.Service.Services.GetRequiredService<PhotoDesk>();

    private string[] Files => Directory.Exists(host.Data.File("photos")) ? Directory.GetFiles(host.Data.File("photos"), "*", SearchOption.AllDirectories) : [];

    public async ValueTask InitializeAsync()
    {
        host = await GardenHost.StartAsync(passcode: true);
        gardener = await host.EnterAsync("gardener@practice.invalid");
    }

    public async ValueTask DisposeAsync()
    {
        gardener.Dispose();
        await host.DisposeAsync();
    }

    [Fact]
    public async Task Sketch_Sent_LiesBelowTheDrawingAndIsShownOnlyFromHere()
    {
        Assert.Equal(HttpStatusCode.SeeOther, (await SketchAsync(Photo, "24")).StatusCode);

        var page = await GardenHost.ReadAsync(gardener, Map);
        var name = PhotoName().Match(page).Groups[1].Value;
        Assert.Contains($"<image x=\"34\" y=\"26\"", page, StringComparison.Ordinal);
        Assert.Contains("opacity=\"0.35\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"24\"", page, StringComparison.Ordinal);
        await IsPhotoAsync($"g/tern-hook/photo/{name}", 800, 600);

        // To be pressed on, the drawing is an image, which fetches nothing: the photo lies below it, as large as on the drawing.
        var placing = WebUtility.HtmlDecode(await GardenHost.ReadAsync(gardener, $"{Map}?place=area/porch"));
        var below = Regex.Match(placing, $"<img src=\"photo/{name}\"([^>]*)>").Groups[1].Value;

        // 24 of the 29 m that 286 px show.
        Assert.Matches("^ alt(=\"\")? width=\"237\" height=\"17[78]\"( /)?$", below);
        var alone = await gardener.GetAsync("g/tern-hook/plot-map.svg?site=house&layout=wide&frame=250x200", TestContext.Current.CancellationToken);
        var svg = XElement.Parse(await BodyAsync(alone));
        Assert.DoesNotContain(svg.Elements(), element => element.Name.LocalName is "image" || (element.Name.LocalName is "rect" && element.Attribute("width")!.Value == svg.Attribute("width")!.Value));
    }

    [Fact]
    public async Task Sketch_AnotherOrTakenAway_LeavesNoFileOfTheOneBefore()
    {
        await SketchAsync(Photo, "24");
        var first = PhotoName().Match(await GardenHost.ReadAsync(gardener, Map)).Groups[1].Value;
        await SketchAsync(DrawnPictures.OfOneColour(300, 400, SKColors.Gray, SKEncodedImageFormat.Png), "12.5");
        Assert.Equal(2, Files.Length);
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, $"g/tern-hook/photo/{first}"));

        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(gardener, Map, $"{Map}/sketch-change", ("site", "house"), ("press", "width"), ("width", "15"))).StatusCode);
        Assert.Contains("value=\"15\"", await GardenHost.ReadAsync(gardener, Map), StringComparison.Ordinal);
        Assert.DoesNotContain("<image", await GardenHost.ReadAsync(gardener, $"{Map}?site=strip"), StringComparison.Ordinal);

        await GardenHost.PostAsync(gardener, Map, $"{Map}/sketch-change", ("site", "house"), ("press", "away"));
        Assert.DoesNotContain("<image", await GardenHost.ReadAsync(gardener, Map), StringComparison.Ordinal);
        Assert.Empty(Files);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("-3")]
    [InlineData("1000.1")]
    [InlineData("wide")]
    [InlineData("\"><script>")]
    public async Task Sketch_WithoutAWidthThatCanBe_IsRefusedAndNotKept(string width)
    {
        var answer = await SketchAsync(Photo, width);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var page = await BodyAsync(answer);
        Assert.Contains("write metres from 0 to 1000", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Empty(Files);

        Assert.Equal(HttpStatusCode.OK, (await GardenHost.PostAsync(gardener, Map, $"{Map}/sketch-change", ("site", "house"), ("press", "width"), ("width", width))).StatusCode);
    }

    [Fact]
    public async Task Photo_OfAThing_IsShownSmallAndLargeAndTakenAway()
    {
        Assert.Equal(HttpStatusCode.SeeOther, (await PhotoAsync(Photo)).StatusCode);
        var page = await GardenHost.ReadAsync(gardener, Page);
        var name = PhotoName().Match(page).Groups[1].Value;
        Assert.Contains($"photo/{name}/small\" alt=\"Photo of {Item.Name}, sent ", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Contains("width=\"320\" height=\"240\"", page, StringComparison.Ordinal);
        await IsPhotoAsync($"g/tern-hook/photo/{name}", 800, 600);
        await IsPhotoAsync($"g/tern-hook/photo/{name}/small", 320, 240);

        await GardenHost.PostAsync(gardener, Page, $"{Page}/photo-away", ("once", "a"), ("press", name));
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, $"g/tern-hook/photo/{name}"));
        Assert.Empty(Files);
    }

    /// <summary>The answer got lost on the way, so the same form comes again; and only so many are kept.</summary>
    [Fact]
    public async Task Photo_AgainAndAgain_IsTakenOnceAndUpToTheMost()
    {
        for (var time = 0; time < 2; time++) await PhotoAsync(Photo, "same");
        Assert.Single(Photos.Of("tern-hook", PhotoDesk.ItemSubject(Item.Id)));
        for (var more = 1; more < PhotoDesk.MostOfItem; more++) Assert.Equal(HttpStatusCode.SeeOther, (await PhotoAsync(Photo)).StatusCode);

        var answer = await PhotoAsync(Photo, page: "g/tern-hook/walk");
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("There are 8 photos of this", await BodyAsync(answer), StringComparison.Ordinal);
        Assert.Equal(2 * PhotoDesk.MostOfItem, Files.Length);
    }

    /// <summary>20 MB, by a browser that does not look for an answer before it has sent all.</summary>
    [Theory]
    [InlineData("photo", 20 << 20)]
    [InlineData("sketch", 20 << 20)]
    [InlineData("photo", PhotoLimits.UploadBytes + 1)]
    public async Task Upload_TooLarge_IsRefusedClearlyAndNotKept(string what, int bytes)
    {
        var answer = what == "photo" ? await PhotoAsync(new byte[bytes]) : await SketchAsync(new byte[bytes], "20");
        Assert.Equal(bytes > Uploads.LargestForm ? HttpStatusCode.RequestEntityTooLarge : HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("larger than 12 MB", await BodyAsync(answer), StringComparison.Ordinal);
        Assert.Empty(Files);
    }

    public static TheoryData<string, string> Spoilt => new()
    {
        { "bomb", "too many pixels" },
        { "page", "not a photo" },
        { "cut", "damaged" },
        { "nothing", "No photo arrived" },
        { "no field", "No photo arrived" },
    };

    [Theory, MemberData(nameof(Spoilt))]
    public async Task Upload_ThatIsNoPhoto_IsRefusedWithTheReason(string what, string told)
    {
        var answer = what == "no field"
            ? await GardenHost.PostAsync(gardener, Page, $"{Page}/photo", ("once", "x"))
            : await PhotoAsync(what switch
            {
                "bomb" => HandMadePng.Of(60_000, 60_000),
                "page" => Encoding.UTF8.GetBytes("<html><script>alert(1)</script></html>"),
                "cut" => DrawnPictures.OfNoise(400, 300, SKEncodedImageFormat.Png)[..9000],
                _ => [],
            });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(told, WebUtility.HtmlDecode(await BodyAsync(answer)), StringComparison.Ordinal);
        Assert.Empty(Files);
        Assert.Equal(HttpStatusCode.SeeOther, (await PhotoAsync(Photo)).StatusCode);
    }

    [Theory]
    [InlineData("../../../evil.jpg")]
    [InlineData("..\\evil.jpg")]
    [InlineData("/etc/passwd")]
    [InlineData("C:\\evil.jpg")]
    [InlineData("a\".jpg")]
    public async Task Upload_WhateverTheFileIsCalled_GetsANameOfOurs(string fileName)
    {
        Assert.Equal(HttpStatusCode.SeeOther, (await PhotoAsync(Photo, fileName: fileName)).StatusCode);
        Assert.Equal(2, Files.Length);
        Assert.All(Files, file => Assert.Matches("/photos/tern-hook/[0-9a-f]{32}(-small)?\\.jpg$", file.Replace('\\', '/')));
        Assert.DoesNotContain("evil", await GardenHost.ReadAsync(gardener, Page), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("..%2f..%2fpasscode")]
    [InlineData("..%5c..%5cpasscode")]
    [InlineData("%2fetc%2fpasswd")]
    [InlineData("00000000000000000000000000000000")]
    [InlineData("x.jpg")]
    public async Task Photo_OfAnyOtherName_IsNoPage(string name)
    {
        await PhotoAsync(Photo);
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, $"g/tern-hook/photo/{name}"));
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, $"g/tern-hook/photo/{name}/small"));
    }

    [Fact]
    public async Task Photo_ForWhoeverMayNotEnter_IsNotThere()
    {
        await PhotoAsync(Photo);
        await SketchAsync(Photo, "20");
        using var stranger = host.NewBrowser();
        using var helper = await host.EnterAsync("helper@practice.invalid");
        foreach (var name in new[] { Page, Map }.Select(page => PhotoName().Match(GardenHost.ReadAsync(gardener, page).Result).Groups[1].Value))
        {
            Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(gardener, $"g/tern-hook/photo/{name}"));
            foreach (var path in new[] { name, $"{name}/small" })
            {
                Assert.Equal(HttpStatusCode.SeeOther, await GardenHost.StatusAsync(stranger, $"g/tern-hook/photo/{path}"));
                Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(helper, $"g/tern-hook/photo/{path}"));
                Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, $"g/other/photo/{path}"));
            }
        }

        Assert.Equal(HttpStatusCode.NotFound, (await SendAsync(helper, "g/tern-hook/now", $"{Page}/photo", Photo)).StatusCode);
        Assert.Equal(4, Files.Length);
    }

    /// <summary>A photo of another garden or another thing is not taken away by a form of this one.</summary>
    [Fact]
    public async Task Photo_OfAnotherThing_IsNeitherShownNorTakenAway()
    {
        await PhotoAsync(Photo);
        var (own, other) = (Photos.Of("tern-hook", PhotoDesk.ItemSubject(Item.Id)).Single(), GardenHost.Garden.Items[1]);
        var foreign = own with { Id = "foreign", GardenId = "other" };
        await host.Service.Services.GetRequiredService<StormStore>().WriteAsync(transaction => PhotoNotes.Put(transaction, foreign), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(gardener, "g/tern-hook/photo/foreign"));

        await GardenHost.PostAsync(gardener, Page, $"g/tern-hook/walk/{other.AreaId}/{other.Id}/photo-away", ("once", "a"), ("press", own.FileName));
        Assert.Equal(HttpStatusCode.OK, await GardenHost.StatusAsync(gardener, $"g/tern-hook/photo/{own.FileName}"));
    }

    [Fact]
    public async Task Upload_WithoutTheHiddenField_IsRefused()
    {
        using var form = Form(Photo, "x", "a.jpg");
        Assert.Equal(HttpStatusCode.BadRequest, (await gardener.PostAsync($"{Page}/photo", form, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Empty(Files);
    }

    /// <summary>Two are still being sent; the third is told to wait, and taken once one of them has ended.</summary>
    [Fact]
    public async Task Upload_WhileTwoOthersAreSent_IsToldToWait()
    {
        var token = HiddenField().Match(await GardenHost.ReadAsync(gardener, Page)).Groups[1].Value;
        var slow = Enumerable.Range(0, Uploads.Most).Select(_ => new SlowForm(token)).ToList();
        var sent = slow.Select(form => gardener.PostAsync($"{Page}/photo", form, TestContext.Current.CancellationToken)).ToList();
        await Task.WhenAll(slow.Select(form => form.Begun));
        var busy = await PhotoAsync(Photo);
        for (var wait = 0; busy.StatusCode != HttpStatusCode.TooManyRequests && wait < 50; wait++) busy = await PhotoAsync(Photo, "again");
        Assert.Equal(HttpStatusCode.TooManyRequests, busy.StatusCode);
        Assert.Contains("Other photos are just being taken in", await BodyAsync(busy), StringComparison.Ordinal);
        Assert.Equal("10", busy.Headers.GetValues("Retry-After").Single());

        foreach (var form in slow) form.End();
        foreach (var answer in sent) Assert.Equal(HttpStatusCode.BadRequest, (await answer).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await PhotoAsync(Photo)).StatusCode);
    }

    private async Task IsPhotoAsync(string path, int width, int height)
    {
        var answer = await gardener.GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("image/jpeg", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("max-age=86400, private", answer.Headers.CacheControl!.ToString());
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        using var picture = DrawnPictures.Open(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal((width, height), (picture.Width, picture.Height));
    }

    private Task<HttpResponseMessage> PhotoAsync(byte[] photo, string? once = null, string page = "", string fileName = "garden.jpg") =>
        SendAsync(gardener, page.Length > 0 ? page : Page, $"{Page}/photo", photo, once, fileName);

    private Task<HttpResponseMessage> SketchAsync(byte[] photo, string width) =>
        SendAsync(gardener, Map, $"{Map}/sketch", photo, more: [("site", "house"), ("width", width)]);

    private static async Task<HttpResponseMessage> SendAsync(
        HttpClient browser, string page, string action, byte[] photo, string? once = null, string fileName = "garden.jpg", params (string Name, string Value)[] more)
    {
        using var form = Form(photo, once ?? Guid.NewGuid().ToString("N"), fileName);
        if (HiddenField().Match(await GardenHost.ReadAsync(browser, page)) is { Success: true } hidden) form.Add(new StringContent(hidden.Groups[1].Value), "__RequestVerificationToken");
        foreach (var (name, value) in more) form.Add(new StringContent(value), name);
        return await browser.PostAsync(action, form, TestContext.Current.CancellationToken);
    }

    private static MultipartFormDataContent Form(byte[] photo, string once, string fileName)
    {
        var file = new ByteArrayContent(photo);
        file.Headers.ContentType = new("image/jpeg");
        file.Headers.ContentDisposition = new("form-data") { Name = "photo", FileName = $"\"{fileName.Replace("\"", "%22", StringComparison.Ordinal)}\"" };
        return new() { file, { new StringContent(once), "once" } };
    }

    private static Task<string> BodyAsync(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    /// <summary>A form of which the beginning is sent, and the end when it is asked for.</summary>
    private sealed class SlowForm : HttpContent
    {
        private readonly byte[] begin;
        private readonly TaskCompletionSource begun = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource end = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public SlowForm(string token)
        {
            Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=edge");
            begin = Encoding.ASCII.GetBytes($"--edge\r\nContent-Disposition: form-data; name=\"__RequestVerificationToken\"\r\n\r\n{token}\r\n");
        }

        public Task Begun => begun.Task;

        public void End() => end.TrySetResult();

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync(begin);
            await stream.FlushAsync();
            begun.TrySetResult();
            await end.Task;
            await stream.WriteAsync("--edge--\r\n"u8.ToArray());
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex("photo/([0-9a-f]{32})")]
    private static partial Regex PhotoName();
}
