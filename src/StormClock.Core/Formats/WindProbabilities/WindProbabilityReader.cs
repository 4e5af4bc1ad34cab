using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Formats.WindProbabilities;

/// <summary>
/// Reads the text of the tropical cyclone wind speed probabilities (product PWS). A text with a row that cannot be understood is
/// refused whole, with its lines: a place without its row would look like one without the chance.
/// </summary>
public static class WindProbabilityReader
{
    /// <summary>Larger texts are refused unread; real ones have under 20 KB.</summary>
    public const int MostBytes = 256 * 1024;

    public static ReadResult<WindProbabilityAdvisory> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes)
        {
            return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB, so it is no table of wind speed probabilities", 1);
        }

        var kind = KnownProduct.Of(bytes.Span);
        if (kind != ProductKind.WindSpeedProbabilities)
        {
            return ReadFault.At(1, $"this is {KnownProduct.NameOf(kind)}, not a table of wind speed probabilities; give the text of product PWS");
        }

        return SourceText.Decode(bytes.Span) is { } text
            ? ReadLines(SourceText.Lines(text))
            : ReadFault.At(1, "there is binary data in the text; fetch it again");
    }

    private static ReadResult<WindProbabilityAdvisory> ReadLines(string[] lines)
    {
        var heading = AdvisoryHeading.Read(lines);
        if (heading.Value is not { } found) return ReadResult.Bad<WindProbabilityAdvisory>(heading.Faults);

        var table = new ProbabilityTable();
        for (var i = found.Line; i < lines.Length; i++) table.Read(lines[i], i + 1);
        var faults = table.FaultsAtEnd(lines.Length);
        if (faults.Count > 0) return ReadResult.Bad<WindProbabilityAdvisory>(faults);

        return new WindProbabilityAdvisory(
            found.StormId,
            found.Name,
            found.Number,
            found.Issued,
            AdvisoryTime.Synoptic(found.Issued),
            table.Rows,
            found.Correction,
            found.Special);
    }
}
