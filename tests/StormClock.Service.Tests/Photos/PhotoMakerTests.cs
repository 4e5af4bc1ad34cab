using System.Text;
using SkiaSharp;
using StormClock.Core;
using StormClock.Service.Photos;

namespace StormClock.Service.Tests.Photos;

/// <summary>What is taken and what comes out of it, and what is told of what is not taken.</summary>
public class PhotoMakerTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public static Task<ReadResult<Photo>> MakeAsync(byte[] upload) => PhotoMaker.MakeAsync(new MemoryStream(upload), Speeches.Us, Cancellation);

    internal static async Task RefusedAsync(PhotoRefusal refusal, byte[] upload) =>
        Assert.Equal(Speeches.Us.For(refusal), Assert.Single((await MakeAsync(upload)).Faults));

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    public async Task Make_EachFormat_IsDrawnAnewAsJpeg(SKEncodedImageFormat format)
    {
        var photo = (await MakeAsync(DrawnPictures.OfBlocks(format))).Value!;

        Assert.Equal((2 * DrawnPictures.BlockPx, 3 * DrawnPictures.BlockPx), (photo.WidthPx, photo.HeightPx));
        using var picture = DrawnPictures.Open(photo.Jpeg);
        Assert.All(DrawnPictures.Blocks.Index(), block =>
            Assert.True(DrawnPictures.IsNear(picture.GetPixel((int)((block.Index % 2 + 0.5) * DrawnPictures.BlockPx), (int)((block.Index / 2 + 0.5) * DrawnPictures.BlockPx)), block.Item)));
    }

    [Theory]
    [InlineData(1600, 1200, 1600, 1200, 320, 240)]
    [InlineData(1601, 1200, 1600, 1199, 320, 240)]
    [InlineData(3000, 1500, 1600, 800, 320, 160)]
    [InlineData(900, 3200, 450, 1600, 90, 320)]
    [InlineData(320, 200, 320, 200, 320, 200)]
    [InlineData(321, 200, 321, 200, 320, 199)]
    [InlineData(5000, 1, 1600, 1, 320, 1)]
    [InlineData(1, 1, 1, 1, 1, 1)]
    public async Task Make_EachSize_FitsAndNeverGrows(int width, int height, int widthPx, int heightPx, int thumbnailWidth, int thumbnailHeight)
    {
        foreach (var format in new[] { SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp })
        {
            var photo = (await MakeAsync(DrawnPictures.OfOneColour(width, height, SKColors.Teal, format))).Value!;

            Assert.Equal((widthPx, heightPx), (photo.WidthPx, photo.HeightPx));
            using var picture = DrawnPictures.Open(photo.Jpeg);
            using var thumbnail = DrawnPictures.Open(photo.Thumbnail);
            Assert.Equal((widthPx, heightPx), (picture.Width, picture.Height));
            Assert.Equal((thumbnailWidth, thumbnailHeight), (thumbnail.Width, thumbnail.Height));
            Assert.True(DrawnPictures.IsNear(picture.GetPixel(widthPx / 2, heightPx / 2), SKColors.Teal));
            Assert.True(DrawnPictures.IsNear(thumbnail.GetPixel(thumbnailWidth / 2, thumbnailHeight / 2), SKColors.Teal));
        }
    }

    [Fact]
    public async Task Make_TransparentParts_AreWhite()
    {
        var photo = (await MakeAsync(DrawnPictures.OfOneColour(40, 40, SKColors.Transparent, SKEncodedImageFormat.Png))).Value!;

        using var picture = DrawnPictures.Open(photo.Jpeg);
        Assert.True(DrawnPictures.IsNear(picture.GetPixel(20, 20), SKColors.White));
    }

    /// <summary>The first bytes are facts of the formats, from memory; what follows them is filling.</summary>
    public static TheoryData<string, string> Foreign => new()
    {
        { "", nameof(PhotoRefusal.Empty) },
        { "\0\0\0\u0018ftypheic\0\0\0\0mif1heic and so on", nameof(PhotoRefusal.Heic) },
        { "\0\0\0\u0018ftypmif1\0\0\0\0mif1heic and so on", nameof(PhotoRefusal.Heic) },
        { "\0\0\0\u0018ftypisom\0\0\0\0 a film", nameof(PhotoRefusal.OtherFormat) },
        { "GIF89a\u0001\0\u0001\0\u0080\0\0 and so on", nameof(PhotoRefusal.OtherFormat) },
        { "%PDF-1.7 and so on", nameof(PhotoRefusal.OtherFormat) },
        { "<svg xmlns=\"http://www.w3.org/2000/svg\"/>", nameof(PhotoRefusal.OtherFormat) },
        { "BM and so on, a bitmap of many colours", nameof(PhotoRefusal.OtherFormat) },
        { "Dear neighbour, here is the photo.", nameof(PhotoRefusal.OtherFormat) },
        { "P", nameof(PhotoRefusal.OtherFormat) },
        { "RIFF\u0024\0\0\0WAVEfmt and so on", nameof(PhotoRefusal.OtherFormat) },
        { "RIFF\u0024\0\0\0WEBPVP8X\n\0\0\0\u0002\0\0\0\u000f\0\0\u000f\0\0ANIM", nameof(PhotoRefusal.Moving) },
        { "RIFF\u0024\0\0\0WEBPVP8", nameof(PhotoRefusal.Broken) },
        { "\u00ff\u00d8\u00ff", nameof(PhotoRefusal.Broken) },
        { "\u0089PNG\r\n\u001a\n", nameof(PhotoRefusal.Broken) },
    };

    [Theory, MemberData(nameof(Foreign))]
    public Task Make_WhatIsNoPhoto_IsRefusedWithWhatToDo(string bytes, string refusal) =>
        RefusedAsync(Enum.Parse<PhotoRefusal>(refusal), Encoding.Latin1.GetBytes(bytes));

    /// <summary>A file that is two things at once is read as what it begins with, and only pixels come out.</summary>
    [Fact]
    public async Task Make_PolyglotThatBeginsAsAnother_IsRefused()
    {
        var jpeg = DrawnPictures.OfBlocks(SKEncodedImageFormat.Jpeg);
        await RefusedAsync(PhotoRefusal.OtherFormat, [.. "%PDF-1.4\n"u8, .. jpeg]);
        await RefusedAsync(PhotoRefusal.OtherFormat, [.. "<script>alert(1)</script>"u8, .. jpeg]);
        await RefusedAsync(PhotoRefusal.OtherFormat, [.. "GIF89a"u8, .. jpeg]);
        await RefusedAsync(PhotoRefusal.Broken, [.. DrawnPictures.OfBlocks(SKEncodedImageFormat.Png)[..8], .. jpeg]);
    }

    [Fact]
    public async Task Make_RefusedInSpanish_IsToldInSpanish()
    {
        var result = await PhotoMaker.MakeAsync(new MemoryStream([1]), Speeches.Spanish, Cancellation);

        Assert.Contains("Tómela como JPEG", Assert.Single(result.Faults).Reason);
    }

    [Fact]
    public async Task Make_ManyAtOnce_AllAreMade()
    {
        var upload = DrawnPictures.OfNoise(600, 400, SKEncodedImageFormat.Jpeg);
        var photos = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => MakeAsync(upload), Cancellation)));

        Assert.All(photos, photo => Assert.Equal(photos[0].Value!.Jpeg.ToArray(), photo.Value!.Jpeg.ToArray()));
    }

    [Fact]
    public async Task Make_Cancelled_StopsReading()
    {
        using var source = new CancellationTokenSource();
        await source.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => PhotoMaker.MakeAsync(new MemoryStream([1]), Speeches.Us, source.Token));
    }
}
