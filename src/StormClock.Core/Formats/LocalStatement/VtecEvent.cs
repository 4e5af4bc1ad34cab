using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime.Text;

namespace StormClock.Core.Formats.LocalStatement;

/// <summary>What one VTEC line says, e.g. /O.NEW.KTBW.HU.W.1009.220927T2100Z-000000T0000Z/.</summary>
/// <param name="Class">O operational, T test, E and X experimental.</param>
/// <param name="Action">NEW, CON, EXT, EXA, EXB, UPG, CAN, EXP, COR or ROU.</param>
/// <param name="Begins">Null when it has begun already (all zeros).</param>
/// <param name="Ends">Null is until further notice (all zeros).</param>
internal sealed partial record VtecEvent(
    char Class, string Action, string Office, string Phenomenon, char Significance, string Number, Instant? Begins, Instant? Ends)
{
    private const string Unsaid = "000000T0000Z";

    private static readonly string[] Actions = ["NEW", "CON", "EXT", "EXA", "EXB", "UPG", "CAN", "EXP", "COR", "ROU"];

    private static readonly InstantPattern Times = InstantPattern.Create("yyMMdd'T'HHmm'Z'", CultureInfo.InvariantCulture);

    /// <summary>True for a line that means to be one, right or wrong.</summary>
    public static bool LooksLike(string line) => Beginning().IsMatch(line);

    /// <summary>Null when the line is not as it should be.</summary>
    public static VtecEvent? Read(string line)
    {
        var match = Whole().Match(line);
        if (!match.Success || !Actions.Contains(match.Groups["action"].Value)) return null;
        if (Time(match.Groups["begin"].Value) is not { } begin || Time(match.Groups["end"].Value) is not { } end) return null;
        return new(
            line[1],
            match.Groups["action"].Value,
            match.Groups["office"].Value,
            match.Groups["phenomenon"].Value,
            match.Groups["significance"].Value[0],
            match.Groups["number"].Value,
            begin.At,
            end.At);
    }

    /// <summary>Null when there is no such time; At is null when the line leaves it open.</summary>
    private static (Instant? At, bool Said)? Time(string written)
    {
        if (written == Unsaid) return (null, false);
        var time = Times.Parse(written);
        return time.Success ? (time.Value, true) : null;
    }

    [GeneratedRegex(@"^/[OTEX]\.[A-Z]{3}\.", RegexOptions.CultureInvariant)]
    private static partial Regex Beginning();

    [GeneratedRegex(@"^/[OTEX]\.(?<action>[A-Z]{3})\.(?<office>[A-Z]{4})\.(?<phenomenon>[A-Z]{2})\.(?<significance>[A-Z])\.(?<number>[0-9]{4})\.(?<begin>[0-9]{6}T[0-9]{4}Z)-(?<end>[0-9]{6}T[0-9]{4}Z)/$", RegexOptions.CultureInvariant)]
    private static partial Regex Whole();
}
