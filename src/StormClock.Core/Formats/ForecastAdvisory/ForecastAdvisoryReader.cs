using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>
/// Reads the text of a tropical cyclone forecast/advisory, in the layouts of 1991 to 2025. What the text does not give
/// stays null. A text that cannot be understood in a line that carries wind is refused whole, with its line: half a
/// forecast would look like a milder one.
/// </summary>
public static class ForecastAdvisoryReader
{
    /// <summary>Larger texts are refused unread; real ones have under 10 KB.</summary>
    public const int MostBytes = 256 * 1024;

    public static ReadResult<CycloneAdvisory> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes)
        {
            return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB, so it is no forecast/advisory", 1);
        }

        var kind = KnownProduct.Of(bytes.Span);
        if (kind != ProductKind.ForecastAdvisory)
        {
            return ReadFault.At(1, $"this is {KnownProduct.NameOf(kind)}, not a tropical cyclone forecast/advisory; give the text of product TCM");
        }

        return SourceText.Decode(bytes.Span) is { } text
            ? ReadLines(SourceText.Lines(text))
            : ReadFault.At(1, "there is binary data in the text; fetch it again");
    }

    private static ReadResult<CycloneAdvisory> ReadLines(string[] lines)
    {
        var heading = AdvisoryHeading.Read(lines);
        if (heading.Value is not { } found) return ReadResult.Bad<CycloneAdvisory>(heading.Faults);

        var body = new AdvisoryBody(found);
        for (var i = found.Line; i < lines.Length; i++) body.Read(lines[i], i + 1);
        var faults = body.FaultsAtEnd(lines.Length);
        if (faults.Count > 0) return ReadResult.Bad<CycloneAdvisory>(faults);

        var points = body.Finish();
        var advisory = new CycloneAdvisory(
            found.StormId,
            found.Name,
            found.Number,
            found.Issued,
            AdvisoryTime.Synoptic(found.Issued),
            points.Now,
            points.Before,
            points.Forecast,
            Corrected: found.Correction is not null,
            found.Special,
            Potential: found.Kind.StartsWith("POTENTIAL", StringComparison.OrdinalIgnoreCase),
            Final: AdvisoryLine.Last().IsMatch(string.Join(' ', lines)))
        {
            CorrectionLetter = found.Correction ?? 'A',
        };
        var track = TrackCheck.Of(advisory);
        return track.Impossible.Count == 0
            ? track.Mended
            : ReadResult.Bad<CycloneAdvisory>([.. track.Impossible.Select(fault => ReadFault.At(body.LineOf(fault.At), fault.Reason))]);
    }
}
