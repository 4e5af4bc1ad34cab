using SkiaSharp;
using StormClock.Service.Photos;

namespace StormClock.Service.Tests.Photos;

/// <summary>Files that broke on their way, and files that somebody broke with intent. A native fault would end the test process.</summary>
public class PhotoDamageTests
{
    private static byte[][] Samples =>
    [
        HandMadeJpeg.With(DrawnPictures.OfNoise(48, 40, SKEncodedImageFormat.Jpeg), HandMadeJpeg.Exif(6)),
        DrawnPictures.InWideColours(new(160, 90, 60)),
        HandMadeJpeg.Of(64, 48, 3, scans: 6),
        HandMadePng.With(DrawnPictures.OfNoise(24, 20, SKEncodedImageFormat.Png), HandMadePng.Chunk("eXIf", HandMadeJpeg.ExifBlock(8))),
        HandMadePng.Of(24, 20, 16, interlaced: true, rows: 60),
        DrawnPictures.OfNoise(48, 40, SKEncodedImageFormat.Webp, quality: 70),
        DrawnPictures.OfNoise(24, 20, SKEncodedImageFormat.Webp, quality: 100),
    ];

    /// <summary>Up to a last few bytes that say nothing of the pixels, such as the end mark of a PNG file.</summary>
    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg, 2)]
    [InlineData(SKEncodedImageFormat.Png, 24)]
    [InlineData(SKEncodedImageFormat.Webp, 2)]
    public async Task Make_CutOffAnywhere_IsRefused(SKEncodedImageFormat format, int spare)
    {
        var whole = DrawnPictures.OfNoise(90, 70, format);
        var photo = (await PhotoMakerTests.MakeAsync(whole)).Value!;

        for (var length = 97; length < whole.Length - spare; length += 97) await PhotoMakerTests.RefusedAsync(PhotoRefusal.Broken, whole[..length]);
        for (var length = whole.Length - spare; length < whole.Length; length++)
        {
            if ((await PhotoMakerTests.MakeAsync(whole[..length])).Value is { } same) Assert.Equal(photo.Jpeg.ToArray(), same.Jpeg.ToArray());
        }
    }

    [Fact]
    public void Draw_SpoiltBytes_GivesAPhotoOrNone() => Spoil(seed: 1, rounds: 3_000);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Draw_ManySpoiltBytes_GivesAPhotoOrNone() => Spoil(seed: 2, rounds: 200_000);

    /// <summary>Below the catch in the maker: an exception fails the test too. Small pictures only, for speed.</summary>
    private static void Spoil(int seed, int rounds)
    {
        var random = new Random(seed);
        var samples = Samples;
        int refused = 0, drawn = 0, broken = 0;
        for (var i = 0; i < rounds; i++)
        {
            var bytes = Spoilt(samples[i % samples.Length], random);
            var (header, _) = PhotoHeader.Read(bytes);
            if (header is null || (long)header.WidthPx * header.HeightPx > 1_000_000) refused++;
            else if (PhotoDrawing.Draw(bytes, header) is { } photo)
            {
                Assert.InRange(photo.WidthPx, 1, PhotoLimits.LongerSidePx);
                Assert.InRange(photo.HeightPx, 1, PhotoLimits.LongerSidePx);
                drawn++;
            }
            else broken++;
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{rounds}: {refused} by the header, {broken} by the decoder, {drawn} drawn");
        Assert.All(new[] { refused, drawn, broken }, count => Assert.True(count > rounds / 50, $"{refused} {broken} {drawn}"));
    }

    private static byte[] Spoilt(byte[] sample, Random random)
    {
        var bytes = sample.ToList();
        for (var i = random.Next(1, 6); i > 0 && bytes.Count > 8; i--)
        {
            var at = random.Next(bytes.Count);
            var length = Math.Min(random.Next(1, 20), bytes.Count - at);
            switch (random.Next(8))
            {
                case 0: bytes.RemoveRange(at, length); break;
                case 1: bytes.InsertRange(at, bytes.GetRange(random.Next(bytes.Count - length + 1), length)); break;
                case 2: bytes[at] = (byte)(random.Next(2) * 255); break;
                case 3: bytes[at] = (byte)random.Next(256); break;
                case 4: bytes[random.Next(Math.Min(64, bytes.Count))] = (byte)random.Next(256); break;
                case 5 when random.Next(10) == 0: bytes.RemoveRange(at, bytes.Count - at); break;
                default: bytes[at] ^= (byte)(1 << random.Next(8)); break;
            }
        }

        byte[] spoilt = [.. bytes];
        if (random.Next(3) > 0 && spoilt is [0x89, ..]) HandMadePng.MendChecks(spoilt);
        return spoilt;
    }
}
