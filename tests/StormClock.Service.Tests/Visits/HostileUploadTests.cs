using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using SkiaSharp;
using StormClock.Core.Garden;
using StormClock.Service.Photos;
using StormClock.Service.Tests.Photos;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Tests.Visits;

/// <summary>Uploads that cannot be taken, to each of the pages that take any: a page with the reason, and nothing kept.</summary>
public sealed partial class HostileUploadTests : IAsyncLifetime
{
    private const string Map = "g/tern-hook/plot-map";
    private const string TooLarge = "larger than 12 MB, and was not kept. Send a smaller copy";

    private static readonly byte[] Photo = DrawnPictures.OfOneColour(800, 600, SKColors.Teal, SKEncodedImageFormat.Jpeg);

    private GardenHost host = null!;
    private HttpClient browser = null!;

    private static string Thing => $"g/tern-hook/walk/{GardenHost.Garden.Items[0].AreaId}/{GardenHost.Garden.Items[0].Id}";

    private string[] Files => Directory.Exists(host.Data.File("photos")) ? Directory.GetFiles(host.Data.File("photos"), "*", SearchOption.AllDirectories) : [];

    public static TheoryData<string> Targets => ["photo", "sketch"];

    public async ValueTask InitializeAsync()
    {
        host = await GardenHost.StartAsync();
        browser = host.NewBrowser();
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await host.DisposeAsync();
    }

    /// <summary>A good photo in all but its size: some 20 MB of remarks, which a camera may write, before the picture.</summary>
    [Theory, MemberData(nameof(Targets))]
    public async Task Upload_GoodJpegOf20Megabytes_IsToldTheLimit(string target)
    {
        var large = WithRemarks(Photo, 20 << 20);
        using (var picture = DrawnPictures.Open(large)) Assert.Equal(800, picture.Width);
        await IsRefusedAsync(await SendAsync(target, File(large)), HttpStatusCode.RequestEntityTooLarge, TooLarge);
        await TakesTheNextAsync(target);
    }

    /// <summary>Between what a photo may have and what a form may have it is read, and refused all the same.</summary>
    [Fact]
    public async Task Upload_GoodJpegJustOverTheLimit_IsToldTheLimit() =>
        await IsRefusedAsync(await SendAsync("photo", File(WithRemarks(Photo, PhotoLimits.UploadBytes))), HttpStatusCode.BadRequest, TooLarge);

    [Theory, MemberData(nameof(Targets))]
    public async Task Upload_Claims200Megabytes_IsToldTheLimitAtOnce(string target)
    {
        var answer = await SpeakAsync($"{Head(target)}Content-Length: {200 << 20}\r\n\r\n--edge\r\n");
        Assert.StartsWith("HTTP/1.1 413 ", answer, StringComparison.Ordinal);
        Assert.Contains(TooLarge, answer, StringComparison.Ordinal);
        Assert.Empty(Files);
    }

    /// <summary>By a sender that looks for no answer before it has sent all.</summary>
    [Theory, MemberData(nameof(Targets))]
    public async Task Upload_InPiecesOfNoLengthBeyondTheLimit_IsToldTheLimit(string target)
    {
        using var form = await FormAsync(target, File(WithRemarks(Photo, 20 << 20)));
        using var request = new HttpRequestMessage(HttpMethod.Post, Address(target)) { Content = form, Headers = { TransferEncodingChunked = true } };
        await IsRefusedAsync(await browser.SendAsync(request, TestContext.Current.CancellationToken), HttpStatusCode.RequestEntityTooLarge, TooLarge);
        await TakesTheNextAsync(target);
    }

    [Fact]
    public async Task Upload_InPiecesOfNoLengthWithinTheLimit_IsTaken()
    {
        using var form = await FormAsync("photo", File(Photo));
        using var request = new HttpRequestMessage(HttpMethod.Post, Address("photo")) { Content = form, Headers = { TransferEncodingChunked = true } };
        Assert.Equal(HttpStatusCode.SeeOther, (await browser.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(2, Files.Length);
    }

    public static TheoryData<string> Broken =>
    [
        "Content-Length: 5000\r\n\r\n--edge\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.jpg\"\r\n\r\nabc",
        "Transfer-Encoding: chunked\r\n\r\n6\r\n--edge\r\n",
        "Transfer-Encoding: chunked\r\n\r\nzz\r\n--edge\r\n",
        "Content-Length: 10\r\n\r\n--edge\r\nxx",
        "\r\n",
    ];

    /// <summary>Whoever sends no more but still listens is told; the page is the one the photo was sent from.</summary>
    [Theory, MemberData(nameof(Broken))]
    public async Task Upload_BrokenMidway_IsToldToSendItAgain(string rest)
    {
        foreach (var target in new[] { "photo", "sketch" })
        {
            var answer = await SpeakAsync(Head(target) + rest);
            Assert.StartsWith("HTTP/1.1 400 ", answer, StringComparison.Ordinal);
            Assert.Contains("a part of it did not arrive. Send it again", answer, StringComparison.Ordinal);
            Assert.Contains("type=\"file\"", answer, StringComparison.Ordinal);
            Assert.Empty(Files);
        }
    }

    [Theory, MemberData(nameof(Targets))]
    public async Task Upload_ThatIsNoForm_IsToldThatNoPhotoArrived(string target)
    {
        foreach (var request in new[] { Head(target, "application/json") + "Content-Length: 2\r\n\r\n{}", Head(target) + "Content-Length: 0\r\n\r\n" })
        {
            var answer = await SpeakAsync(request);
            Assert.StartsWith("HTTP/1.1 400 ", answer, StringComparison.Ordinal);
            Assert.Contains("No photo arrived. Choose one and send it again.", answer, StringComparison.Ordinal);
        }
    }

    /// <summary>Whoever was signed out meanwhile is told so, not cut off while the photo is still being sent.</summary>
    [Theory, MemberData(nameof(Targets))]
    public async Task Upload_ByAStranger_IsAnsweredOnceAllIsSent(string target)
    {
        await using var guarded = await GardenHost.StartAsync(passcode: true);
        using var stranger = guarded.NewBrowser();
        using var form = new MultipartFormDataContent { File(WithRemarks(Photo, 20 << 20)) };
        var answer = await stranger.PostAsync(Address(target), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("<h1>", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> NoPhotos => new()
    {
        { "png bomb", "too many pixels" },
        { "jpeg bomb", "too many pixels" },
        { "text", "not a photo" },
        { "empty", "No photo arrived" },
        { "none", "No photo arrived" },
        { "two", "one at a time is taken" },
    };

    [Theory, MemberData(nameof(NoPhotos))]
    public async Task Upload_ThatIsNoPhoto_IsToldWhy(string what, string told)
    {
        foreach (var target in new[] { "photo", "sketch" })
        {
            HttpContent[] parts = what switch
            {
                "png bomb" => [File(HandMadePng.Of(60_000, 60_000))],
                "jpeg bomb" => [File(Claiming60000())],
                "text" => [File(Encoding.UTF8.GetBytes("Dear garden, this is a letter."))],
                "empty" => [File([])],
                "two" => [File(Photo), File(Photo)],
                _ => [],
            };
            await IsRefusedAsync(await SendAsync(target, parts), HttpStatusCode.BadRequest, told);
            await TakesTheNextAsync(target);
        }
    }

    /// <summary>Names of files are never ours; a good photo is kept under a name made here.</summary>
    [Theory, MemberData(nameof(Targets))]
    public async Task Upload_NamedLikeAPath_GetsANameOfOurs(string target)
    {
        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(target, File(Photo, "../../link-keys"))).StatusCode);
        Assert.Equal(2, Files.Length);
        Assert.All(Files, file => Assert.Matches("/photos/tern-hook/[0-9a-f]{32}(-small)?\\.jpg$", file.Replace('\\', '/')));
    }

    private static string Address(string target) => target == "photo" ? $"{Thing}/photo" : $"{Map}/sketch";

    private static string Head(string target, string type = "multipart/form-data; boundary=edge") => $"POST /{Address(target)} HTTP/1.1\r\nHost: HOST\r\nConnection: close\r\nContent-Type: {type}\r\n";

    private async Task IsRefusedAsync(HttpResponseMessage answer, HttpStatusCode status, string told)
    {
        Assert.Equal(status, answer.StatusCode);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains(told, page, StringComparison.Ordinal);
        Assert.Contains("type=\"file\"", page, StringComparison.Ordinal);
        Assert.Empty(Files);
    }

    private async Task TakesTheNextAsync(string target)
    {
        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(target, File(Photo))).StatusCode);
        Assert.Equal(2, Files.Length);
        foreach (var subject in new[] { PhotoDesk.ItemSubject(GardenHost.Garden.Items[0].Id), PhotoDesk.SketchSubject("house") })
        {
            var photos = (PhotoDesk)host.Service.Services.GetService(typeof(PhotoDesk))!;
            foreach (var note in photos.Of("tern-hook", subject)) await photos.RemoveAsync("tern-hook", subject, note.FileName);
        }
    }

    private async Task<HttpResponseMessage> SendAsync(string target, params HttpContent[] parts)
    {
        using var form = await FormAsync(target, parts);
        return await browser.PostAsync(Address(target), form, TestContext.Current.CancellationToken);
    }

    private async Task<MultipartFormDataContent> FormAsync(string target, params HttpContent[] parts)
    {
        var page = await GardenHost.ReadAsync(browser, target == "photo" ? Thing : Map);
        var form = new MultipartFormDataContent
        {
            { new StringContent(HiddenField().Match(page).Groups[1].Value), "__RequestVerificationToken" },
            { new StringContent(Guid.NewGuid().ToString("N")), "once" },
            { new StringContent("house"), "site" },
            { new StringContent("24"), "width" },
        };
        foreach (var part in parts) form.Add(part);
        return form;
    }

    private static ByteArrayContent File(byte[] bytes, string name = "garden.jpg") => new(bytes)
    {
        Headers = { ContentType = new("image/jpeg"), ContentDisposition = new("form-data") { Name = Uploads.Field, FileName = $"\"{name}\"" } },
    };

    /// <summary>The page that comes back of bytes on the wire. Nothing more is sent after them, so that the server waits in vain for the rest, some seconds.</summary>
    private async Task<string> SpeakAsync(string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(host.Service.Address.Host, host.Service.Address.Port, TestContext.Current.CancellationToken);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request.Replace("HOST", host.Service.Address.Authority, StringComparison.Ordinal)), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        var answer = new StringBuilder();
        var part = new char[4096];
        while (!answer.ToString().Contains("</html>", StringComparison.Ordinal) && await reader.ReadAsync(part, TestContext.Current.CancellationToken) is > 0 and var count) answer.Append(part, 0, count);
        return WebUtility.HtmlDecode(answer.ToString());
    }

    /// <summary>Comment segments (ITU-T T.81, B.2.4.5) right after the file's beginning, of at least so many bytes.</summary>
    private static byte[] WithRemarks(byte[] jpeg, int bytes)
    {
        var remark = new byte[65_537];
        (remark[0], remark[1], remark[2], remark[3]) = (0xFF, 0xFE, 0xFF, 0xFF);
        return [.. jpeg[..2], .. Enumerable.Repeat(remark, bytes / remark.Length + 1).SelectMany(part => part), .. jpeg[2..]];
    }

    /// <summary>A real photo whose frame header (ITU-T T.81, B.2.2) says 60000 each way.</summary>
    private static byte[] Claiming60000()
    {
        var jpeg = Photo.ToArray();
        var frame = Enumerable.Range(0, jpeg.Length - 1).First(at => jpeg[at] == 0xFF && jpeg[at + 1] is 0xC0 or 0xC2);
        foreach (var side in new[] { frame + 5, frame + 7 }) System.Buffers.Binary.BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(side), 60_000);
        return jpeg;
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();
}
