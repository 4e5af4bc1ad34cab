namespace StormClock.Pages.Tests.Checks;

/// <summary>One answer as it came over the wire.</summary>
/// <param name="Bytes">Head and body, compressed as sent.</param>
internal sealed record WirePart(string Address, string MediaType, int Bytes);

/// <summary>How much a page costs on a thin line: all that is fetched for it but photos.</summary>
internal static class Wire
{
    /// <summary>Bytes.</summary>
    public const int Most = 60 * 1024;

    public static async Task<IReadOnlyList<WirePart>> MeasureAsync(IEnumerable<IRequest> finished)
    {
        var parts = new List<WirePart>();
        foreach (var request in finished)
        {
            if (await request.ResponseAsync() is not { } answer) continue;
            var sizes = await request.SizesAsync();
            var type = answer.Headers.GetValueOrDefault("content-type", "").Split(';')[0].Trim();
            parts.Add(new(request.Url, type, sizes.ResponseHeadersSize + sizes.ResponseBodySize));
        }

        return parts;
    }

    /// <param name="most">Bytes.</param>
    public static void Check(IReadOnlyList<WirePart> parts, int most = Most)
    {
        var counted = parts.Where(part => !IsPhoto(part)).ToList();
        Assert.True(counted.Count > 0, "nothing came over the wire");
        var sum = counted.Sum(part => part.Bytes);
        Assert.True(sum <= most, $"{sum} bytes came over the wire, {most} may:\n{string.Join('\n', counted.Select(part => $"{part.Bytes} {part.MediaType} {part.Address}"))}");
    }

    private static bool IsPhoto(WirePart part) => part.MediaType.StartsWith("image/", StringComparison.Ordinal) && part.MediaType != "image/svg+xml";
}
