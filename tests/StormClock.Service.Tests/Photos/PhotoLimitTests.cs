using StormClock.Service.Photos;

namespace StormClock.Service.Tests.Photos;

/// <summary>Every limit exactly, and one above it.</summary>
public class PhotoLimitTests
{
    [Fact]
    public async Task Upload_OfExactlyTheLimit_IsTakenAndOneByteMoreIsNot()
    {
        var jpeg = DrawnPictures.OfBlocks(SkiaSharp.SKEncodedImageFormat.Jpeg);

        Assert.True((await PhotoMakerTests.MakeAsync([.. jpeg, .. new byte[PhotoLimits.UploadBytes - jpeg.Length]])).IsGood);
        await PhotoMakerTests.RefusedAsync(PhotoRefusal.TooLarge, [.. jpeg, .. new byte[PhotoLimits.UploadBytes - jpeg.Length + 1]]);
    }

    [Fact]
    public async Task Upload_WithoutEnd_IsLeftWhereItIsTooLarge()
    {
        var upload = new Endless();

        var result = await PhotoMaker.MakeAsync(upload, Speeches.Us, TestContext.Current.CancellationToken);

        Assert.Equal(Speeches.Us.For(PhotoRefusal.TooLarge), Assert.Single(result.Faults));
        Assert.InRange(upload.Given, PhotoLimits.UploadBytes, PhotoLimits.UploadBytes + (1 << 20));
    }

    /// <summary>8192 x 6400 are exactly 50 x 2^20, 40611 x 1291 are one more; decoded in full, from a file of 200 kB.</summary>
    [Fact]
    public async Task Pixels_OfExactlyTheLimit_AreTakenAndOneMoreIsNot()
    {
        Assert.Equal(PhotoLimits.Pixels, 8192 * 6400);

        var photo = (await PhotoMakerTests.MakeAsync(HandMadeJpeg.Of(8192, 6400))).Value!;

        Assert.Equal((1600, 1250), (photo.WidthPx, photo.HeightPx));
        await PhotoMakerTests.RefusedAsync(PhotoRefusal.TooManyPixels, HandMadeJpeg.Of(40_611, 1_291));
    }

    /// <summary>A few bytes that claim more than any memory holds: refused by the header, which our own code reads.</summary>
    [Fact]
    public async Task Pixels_ClaimedByATinyFile_AreRefused()
    {
        byte[][] bombs =
        [
            HandMadeJpeg.Of(30_000, 30_000)[..400],
            HandMadeJpeg.Of(65_535, 65_535, 3)[..400],
            HandMadePng.Of(30_000, 30_000),
            HandMadePng.Of(30_000, 30_000, interlaced: true),
            HandMadePng.Of(int.MaxValue, int.MaxValue),
            [.. "RIFF\x24\0\0\0WEBPVP8X\n\0\0\0\0\0\0\0"u8, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, .. new byte[20]],
            [.. "RIFF\x24\0\0\0WEBPVP8L\x14\0\0\0\x2f"u8, 0xFF, 0xFF, 0xFF, 0x0F, .. new byte[20]],
            [.. "RIFF\x24\0\0\0WEBPVP8 \x14\0\0\0\0\0\0"u8, 0x9D, 0x01, 0x2A, 0xFF, 0x3F, 0xFF, 0x3F, .. new byte[20]],
        ];
        foreach (var bomb in bombs)
        {
            Assert.True(bomb.Length < 1000);
            Assert.Equal((null, PhotoRefusal.TooManyPixels), PhotoHeader.Read(bomb));
            await PhotoMakerTests.RefusedAsync(PhotoRefusal.TooManyPixels, bomb);
        }
    }

    /// <summary>What decoders were measured to take for each pixel, in bytes: measured with pictures of 50 megapixels.</summary>
    [Fact]
    public void Memory_OfTheDecoder_IsBoundedToo()
    {
        // 4 and a third more, for scaling
        Assert.Equal(PhotoLimits.DecoderBytes, PhotoHeader.Read(HandMadePng.Of(8192, 6144)).Header!.DecoderBytes);
        Assert.Equal(PhotoRefusal.TooManyPixels, PhotoHeader.Read(HandMadePng.Of(1, 8192 * 6144 + 1)).Refusal);

        // 4 or 8 more where rows wait for others
        Assert.NotNull(PhotoHeader.Read(HandMadePng.Of(5000, 5752, interlaced: true)).Header);
        Assert.Equal(PhotoRefusal.TooManyPixels, PhotoHeader.Read(HandMadePng.Of(5000, 5753, interlaced: true)).Refusal);
        Assert.NotNull(PhotoHeader.Read(HandMadePng.Of(5000, 4026, 16, interlaced: true)).Header);
        Assert.Equal(PhotoRefusal.TooManyPixels, PhotoHeader.Read(HandMadePng.Of(5000, 4027, 16, interlaced: true)).Refusal);

        // 2 for each of three samples
        Assert.NotNull(PhotoHeader.Read(HandMadeJpeg.Of(7000, 6376, 3)).Header);
        Assert.Equal(PhotoRefusal.TooManyPixels, PhotoHeader.Read(HandMadeJpeg.Of(7000, 6400, 3)).Refusal);
    }

    /// <summary>Each scan goes over the whole picture again: in a few bytes a file could ask for hours. The library stops at a hundred.</summary>
    [Fact]
    public async Task Scans_OfAProgressivePhoto_AreBounded()
    {
        Assert.True((await PhotoMakerTests.MakeAsync(HandMadeJpeg.Of(640, 480, 3, scans: 12))).IsGood);
        await PhotoMakerTests.RefusedAsync(PhotoRefusal.Broken, HandMadeJpeg.Of(640, 480, 3, scans: 100_000));
    }

    private sealed class Endless : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Given; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Given += count;
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
