using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Formats.LocalStatement;

/// <summary>The zones or counties that a part of a statement is for, and when that part is to be taken down.</summary>
/// <param name="Codes">Each one whole, e.g. FLZ151.</param>
internal sealed partial record UgcLine(IReadOnlyList<string> Codes, Instant Expires)
{
    /// <summary>Lines that one may run over; the longest at hand has two.</summary>
    private const int MostLines = 40;

    public static bool Begins(string line) => Beginning().IsMatch(line);

    /// <summary>
    /// Reads "FLZ151-155>158-272300-", which may go on over several lines up to its six digits of day and time. Null when it
    /// does not end so or is not as it should be; <paramref name="next"/> is the index of the line behind it.
    /// </summary>
    public static UgcLine? Read(string[] lines, int from, Instant issued, out int next)
    {
        var (codes, prefix, wrong) = (new List<string>(), "", false);
        for (next = from; next < Math.Min(lines.Length, from + MostLines) && lines[next].Length > 0 && lines[next][0] != '/';)
        {
            foreach (var part in lines[next++].Split('-', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                if (Expiry().IsMatch(part)) return !wrong && codes.Count > 0 && ExpiresAt(part, issued) is { } expires ? new UgcLine(codes, expires) : null;
                wrong |= !Add(part, ref prefix, codes);
            }
        }

        return null;
    }

    /// <summary>"FLZ151", "155", "155>158" or "FLZALL"; a state is written once and holds for what follows.</summary>
    private static bool Add(string part, ref string prefix, List<string> codes)
    {
        var match = Part().Match(part);
        if (!match.Success) return false;
        if (match.Groups["prefix"].Success) prefix = match.Groups["prefix"].Value;
        if (prefix.Length == 0) return false;
        if (match.Groups["all"].Success)
        {
            codes.Add(prefix + "ALL");
            return true;
        }

        var first = Whole(match, "first");
        var last = match.Groups["last"].Success ? Whole(match, "last") : first;
        for (var number = first; number <= last; number++) codes.Add(prefix + number.ToString("000", CultureInfo.InvariantCulture));
        return last >= first;
    }

    private static Instant? ExpiresAt(string digits, Instant issued) =>
        AdvisoryTime.Nearest(int.Parse(digits[..2], CultureInfo.InvariantCulture), int.Parse(digits[2..], CultureInfo.InvariantCulture), issued);

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[A-Z]{2}[CZ](?:[0-9]{3}|ALL)[->]", RegexOptions.CultureInvariant)]
    private static partial Regex Beginning();

    [GeneratedRegex(@"^(?<prefix>[A-Z]{2}[CZ])?(?:(?<first>[0-9]{3})(?:>(?<last>[0-9]{3}))?|(?<all>ALL))$", RegexOptions.CultureInvariant)]
    private static partial Regex Part();

    [GeneratedRegex(@"^[0-9]{6}$", RegexOptions.CultureInvariant)]
    private static partial Regex Expiry();
}
