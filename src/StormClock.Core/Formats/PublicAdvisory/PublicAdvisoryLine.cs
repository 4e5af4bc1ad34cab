using System.Text.RegularExpressions;

namespace StormClock.Core.Formats.PublicAdvisory;

/// <summary>The lines and sentences that tell of position, wind and movement.</summary>
internal static partial class PublicAdvisoryLine
{
    /// <summary>"Tropical Storm Ian Intermediate Advisory Number 12A"; the title may run over two lines.</summary>
    [GeneratedRegex(@"\b(?:POTENTIAL\s+TROPICAL\s+CYCLONE|POST-TROPICAL\s+CYCLONE|TROPICAL\s+(?:STORM|DEPRESSION|CYCLONE)|SUBTROPICAL\s+(?:STORM|DEPRESSION)|HURRICANE|REMNANTS\s+OF|(?:POST-TROPICAL\s+)?REMNANT\s+LOW(?:\s+OF)?|EXTRATROPICAL\s+(?:STORM|CYCLONE|LOW))\s+(?<name>[A-Z][A-Z'-]*(?:\s+[A-Z][A-Z'-]*)??)\s+(?:SPECIAL\s+)?(?:INTERMEDIATE\s+)?ADVISORY\s+NUMBER\s+(?<number>[0-9]{1,3})(?<letter>[A-Z])?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Title();

    /// <summary>"LOCATION...17.7N 81.7W" or "REPEATING THE 11 PM EDT POSITION...17.9 N...78.6 W".</summary>
    [GeneratedRegex(@"\b(?:LOCATION|POSITION)\s*\.\.\.\s*(?<lat>[0-9]{1,2}\.[0-9]{1,2})\s*(?<ns>[NS])[\s.]{1,5}(?<lon>[0-9]{1,3}\.[0-9]{1,2})\s*(?<ew>[EW])\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Location();

    /// <summary>"MAXIMUM SUSTAINED WINDS...70 MPH...110 KM/H".</summary>
    [GeneratedRegex(@"\bMAXIMUM\s+SUSTAINED\s+WINDS\s*\.\.\.\s*(?<mph>[0-9]{1,3})\s*MPH\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Wind();

    /// <summary>"PRESENT MOVEMENT...NW OR 320 DEGREES AT 13 MPH...20 KM/H", "…STATIONARY" or "MOVEMENT TOWARD...NORTHWEST NEAR 13 MPH".</summary>
    [GeneratedRegex(@"\b(?:PRESENT\s+MOVEMENT\s*\.\.\.\s*(?:(?<still>(?:NEARLY\s+)?STATIONARY)|[NSEW]{1,3}\s+OR\s+(?<deg>[0-9]{1,3})\s+DEGREES\s+AT\s+(?<mph>[0-9]{1,3})\s+MPH)|MOVEMENT\s+TOWARD\s*\.\.\.\s*(?:THE\s+)?(?<toward>[A-Z-]{4,15})\s+NEAR\s+(?<mph>[0-9]{1,3})\s+MPH)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Movement();
}
