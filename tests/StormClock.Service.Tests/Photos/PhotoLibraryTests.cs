using SkiaSharp;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Photos;

/// <summary>The library that decodes costs memory, so it is loaded with the first photo and not before.</summary>
public class PhotoLibraryTests
{
    private const string Native = "libSkiaSharp";
    private const string Managed = "SkiaSharp.dll";

    [Fact]
    public async Task Serve_WithoutAPhoto_HasNotLoadedTheLibrary()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs /proc");
        using var folder = new TempFolder();
        Directory.CreateDirectory(folder.File("config/gardens"));
        await File.WriteAllTextAsync(folder.File("config/stormclock.yaml"), "pages: {listen: \"127.0.0.1:0\"}\n", TestContext.Current.CancellationToken);

        using var service = ServiceProcess.Start(folder.Path, "serve", "--config", "config", "--data", "data");
        await service.HearAsync(said => said.Contains("http://127.0.0.1:", StringComparison.Ordinal));
        var loaded = await File.ReadAllTextAsync($"/proc/{service.Id}/maps", TestContext.Current.CancellationToken);

        Assert.Contains("stormclock.dll", loaded);
        Assert.DoesNotContain(Native, loaded);
        Assert.DoesNotContain(Managed, loaded);
        service.Terminate();
        Assert.Equal(0, await service.EndAsync());
    }

    /// <summary>The counterpart: the names looked for above are those of a process that has made one.</summary>
    [Fact]
    public async Task Make_APhoto_LoadsTheLibrary()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs /proc");

        Assert.True((await PhotoMakerTests.MakeAsync(DrawnPictures.OfBlocks(SKEncodedImageFormat.Jpeg))).IsGood);

        var loaded = await File.ReadAllTextAsync("/proc/self/maps", TestContext.Current.CancellationToken);
        Assert.Contains(Native, loaded);
        Assert.Contains(Managed, loaded);
    }
}
