using System.Net;
using System.Text.RegularExpressions;
using SkiaSharp;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Desk;
using StormClock.Service.Tests.Photos;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Visits;

/// <summary>Photos of things that leave the book, by the walk and by hand.</summary>
public sealed partial class PhotosAsideTests : IAsyncLifetime
{
    private const string Area = "g/tern-hook/walk/porch";

    private readonly TempFolder gardens = new();
    private GardenHost host = null!;
    private HttpClient browser = null!;

    private string File => gardens.File("tern-hook.yaml");

    private GardenBook Book => GardenFiles.Read(File).Value!;

    private string Kept => host.Data.File("photos/tern-hook");

    private string[] Gone => Directory.Exists(Path.Combine(Kept, "gone")) ? Directory.GetFiles(Path.Combine(Kept, "gone")) : [];

    public async ValueTask InitializeAsync()
    {
        var text = await System.IO.File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"));
        await System.IO.File.WriteAllTextAsync(File, text.Replace("practice: true", "practice: false", StringComparison.Ordinal));
        host = await GardenHost.StartAsync(shelf: new GardenShelf(gardens.Path));
        browser = host.NewBrowser();
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await host.DisposeAsync();
        gardens.Dispose();
    }

    [Fact]
    public async Task Photo_ThingTakenOutOnTheWalk_IsNotShownWithTheNextOfThatId()
    {
        await AddAsync();
        var (name, bytes) = await SendPhotoAsync();
        await RemoveAsync();
        Assert.Equal(HttpStatusCode.NotFound, await GardenHost.StatusAsync(browser, $"g/tern-hook/photo/{name}"));

        await AddAsync();
        Assert.DoesNotContain("photo/", await GardenHost.ReadAsync(browser, $"{Area}/tin-owl"), StringComparison.Ordinal);
        Assert.Matches($"item-tin-owl-20270920-{name}\\.jpg$", Assert.Single(Gone));
        Assert.Equal(bytes, await System.IO.File.ReadAllBytesAsync(Gone[0], TestContext.Current.CancellationToken));
        Assert.Empty(Directory.GetFiles(Kept));
    }

    /// <summary>The service hears of it at its next look.</summary>
    [Fact]
    public async Task Photo_ThingTakenOutByHand_IsSetAsideAtTheNextLook()
    {
        var before = await TextAsync();
        await AddAsync();
        var with = await TextAsync();
        var (name, _) = await SendPhotoAsync();
        await System.IO.File.WriteAllTextAsync(File, before, TestContext.Current.CancellationToken);
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        await System.IO.File.WriteAllTextAsync(File, with, TestContext.Current.CancellationToken);
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));

        Assert.DoesNotContain("photo/", await GardenHost.ReadAsync(browser, $"{Area}/tin-owl"), StringComparison.Ordinal);
        Assert.Contains(name, Assert.Single(Gone), StringComparison.Ordinal);
    }

    /// <summary>Neither another name and place, nor a file that cannot be read or is away for a while, is a thing that left.</summary>
    [Fact]
    public async Task Photo_ThingStillInTheBook_Stays()
    {
        await AddAsync();
        var (name, _) = await SendPhotoAsync();
        var page = await GardenHost.ReadAsync(browser, $"{Area}/tin-owl");
        Assert.Equal(HttpStatusCode.SeeOther, (await GardenHost.PostAsync(browser, $"{Area}/tin-owl", $"{Area}/tin-owl/change", ("once", "c"), ("mark", Mark().Match(page).Groups[1].Value), ("press", "save"), ("name", "Tin heron"), ("area", "back-fence"))).StatusCode);

        var text = await TextAsync();
        await System.IO.File.WriteAllTextAsync(File, "garden: {", TestContext.Current.CancellationToken);
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        System.IO.File.Delete(File);
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        await System.IO.File.WriteAllTextAsync(File, text, TestContext.Current.CancellationToken);
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));

        Assert.Contains($"photo/{name}/small", await GardenHost.ReadAsync(browser, "g/tern-hook/walk/back-fence/tin-owl"), StringComparison.Ordinal);
        Assert.Empty(Gone);
    }

    /// <summary>The page goes on, the photo is not lost and the keeper is told.</summary>
    [Fact]
    public async Task Photo_ThatCannotBeMoved_StaysAndIsTold()
    {
        await AddAsync();
        var (name, _) = await SendPhotoAsync();
        await System.IO.File.WriteAllTextAsync(Path.Combine(Kept, "gone"), "in the way", TestContext.Current.CancellationToken);
        await RemoveAsync();
        Assert.True(System.IO.File.Exists(Path.Combine(Kept, $"{name}.jpg")));

        await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Contains(host.Service.Said, entry => entry.Kind == "trouble" && entry.Reason!.Contains("photos/tern-hook/gone", StringComparison.Ordinal));

        System.IO.File.Delete(Path.Combine(Kept, "gone"));
        await host.Service.AdvanceAsync(Duration.FromMinutes(30));
        Assert.Contains(name, Assert.Single(Gone), StringComparison.Ordinal);
    }

    private async Task AddAsync()
    {
        var kind = Book.Items[0].Kind;
        var added = await GardenHost.PostAsync(browser, Area, $"{Area}/add", ("once", Guid.NewGuid().ToString("N")), ("name", "Tin owl"), ("kind", kind), ("count", "1"));
        Assert.EndsWith("told=tin-owl", added.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    private async Task RemoveAsync()
    {
        var page = await GardenHost.ReadAsync(browser, $"{Area}/tin-owl");
        var removed = await GardenHost.PostAsync(browser, $"{Area}/tin-owl", $"{Area}/tin-owl/change", ("once", Guid.NewGuid().ToString("N")), ("mark", Mark().Match(page).Groups[1].Value), ("press", "remove"));
        Assert.Equal(HttpStatusCode.SeeOther, removed.StatusCode);
    }

    private async Task<(string Name, byte[] Bytes)> SendPhotoAsync()
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent(HiddenField().Match(await GardenHost.ReadAsync(browser, $"{Area}/tin-owl")).Groups[1].Value), "__RequestVerificationToken" },
            { new StringContent("p"), "once" },
            { new ByteArrayContent(DrawnPictures.OfOneColour(80, 60, SKColors.Teal, SKEncodedImageFormat.Jpeg)), "photo", "owl.jpg" },
        };
        Assert.Equal(HttpStatusCode.SeeOther, (await browser.PostAsync($"{Area}/tin-owl/photo", form, TestContext.Current.CancellationToken)).StatusCode);
        var name = PhotoName().Match(await GardenHost.ReadAsync(browser, $"{Area}/tin-owl")).Groups[1].Value;
        return (name, await browser.GetByteArrayAsync($"g/tern-hook/photo/{name}", TestContext.Current.CancellationToken));
    }

    private Task<string> TextAsync() => System.IO.File.ReadAllTextAsync(File, TestContext.Current.CancellationToken);

    [GeneratedRegex("name=\"mark\" value=\"([^\"]+)\"")]
    private static partial Regex Mark();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();

    [GeneratedRegex("photo/([0-9a-f]{32})")]
    private static partial Regex PhotoName();
}
