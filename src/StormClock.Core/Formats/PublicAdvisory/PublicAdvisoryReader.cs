using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.PublicAdvisory;

/// <summary>
/// Reads position, wind and movement from a public advisory (product TCP), with the lines of its summary or, as before 2010, with
/// the sentences that repeat them. Without a position on the globe the text is refused.
/// </summary>
public static class PublicAdvisoryReader
{
    /// <summary>Larger texts are refused unread; real ones have under 12 KB.</summary>
    public const int MostBytes = 256 * 1024;

    private const int LinesOfHeading = 20;

    public static ReadResult<CyclonePosition> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes) return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB, so it is no public advisory", 1);
        return SourceText.Decode(bytes.Span) is { } text
            ? ReadLines(SourceText.Lines(text))
            : ReadFault.At(1, "there is binary data in the text; fetch it again");
    }

    private static ReadResult<CyclonePosition> ReadLines(string[] lines)
    {
        var heading = string.Join(' ', lines.Where(line => line.Length > 0).Take(LinesOfHeading));
        var title = PublicAdvisoryLine.Title().Match(heading);
        if (!title.Success) return ReadFault.At(1, "no title such as TROPICAL STORM IAN INTERMEDIATE ADVISORY NUMBER 12A");
        if (IssueTime.Of(lines) is not { } issued) return ReadFault.At(1, "no date line such as 200 AM EDT Mon Sep 26 2022 in a zone that is known");

        var body = string.Join('\n', lines);
        if (PublicAdvisoryLine.Location().Match(body) is not { Success: true } location) return ReadFault.At(1, "no line LOCATION...17.7N 81.7W, nor a sentence that repeats the position");
        if (AdvisoryLine.PointOf(location) is not { } centre) return Fault(body, location, "the position is not on the globe");
        var wind = PublicAdvisoryLine.Wind().Match(body);
        if (wind.Success && Number(wind, "mph") * Wind.MpsPerMph / Wind.MpsPerKt > TrackCheck.StrongestKt) return Fault(body, wind, "the wind is beyond any storm; fetch it again");

        var (deg, kt) = Movement(PublicAdvisoryLine.Movement().Match(body));
        var name = title.Groups["name"].Value.ToUpperInvariant();
        return new CyclonePosition(
            AdvisoryHeading.StormIdOf(heading, name, issued),
            name,
            Number(title, "number").ToString("0", CultureInfo.InvariantCulture) + title.Groups["letter"].Value.ToUpperInvariant(),
            issued,
            centre,
            wind.Success ? KnotsInFives(Number(wind, "mph")) : null,
            deg,
            kt,
            AdvisoryHeading.CorrectionOf(heading, heading[title.Index..]));
    }

    /// <summary>The office works in steps of 5 kt and writes them for the public as mph in steps of 5 (R: the 271 at hand that have a forecast/advisory of the same number agree with it).</summary>
    private static double KnotsInFives(double mph) => 5 * Math.Round(mph * Wind.MpsPerMph / Wind.MpsPerKt / 5);

    private static (double? Deg, double? Kt) Movement(Match told)
    {
        if (!told.Success) return (null, null);
        if (told.Groups["still"].Success) return (null, 0);
        var deg = told.Groups["deg"].Success ? Number(told, "deg") : CompassDeg(told.Groups["toward"].Value);
        return deg is null or > 360 ? (null, null) : (deg, Number(told, "mph") * Wind.MpsPerMph / Wind.MpsPerKt);
    }

    /// <summary>"WEST-NORTHWEST" as degrees.</summary>
    private static double? CompassDeg(string words)
    {
        var letters = words.ToUpperInvariant().Replace("NORTH", "N", StringComparison.Ordinal).Replace("SOUTH", "S", StringComparison.Ordinal)
            .Replace("EAST", "E", StringComparison.Ordinal).Replace("WEST", "W", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);
        string[] rose = ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];
        var index = Array.IndexOf(rose, letters);
        return index < 0 ? null : index * 22.5;
    }

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    private static ReadFault Fault(string body, Match at, string reason) => ReadFault.At(body.AsSpan(0, at.Index).Count('\n') + 1, reason);
}
