using System.Text.RegularExpressions;

namespace StormClock.Core.Advisories;

/// <summary>
/// Compares the codes of an alert area with those of a site. A list of codes can only say "not here" to a site that has a
/// code of the same kind to compare with.
/// </summary>
internal static partial class AlertCodes
{
    private enum Kind { Zone, County, Same, Other }

    public static AlertWhere Of(IReadOnlyList<AlertGeocode> area, IReadOnlyList<string> site)
    {
        var sites = site.Select(code => code.Trim()).Where(code => code.Length > 0).ToList();
        var matches = area.SelectMany(code => sites.Select(own => Of(code.Code, own))).ToList();
        if (matches.Count == 0) return AlertWhere.MayConcern;
        if (matches.Contains(AlertWhere.Concerns)) return AlertWhere.Concerns;

        var partly = area.Any(code => sites.Any(own => IsPartOf(code.Code, own)));
        return partly || !matches.Contains(AlertWhere.Elsewhere) ? AlertWhere.MayConcern : AlertWhere.Elsewhere;
    }

    private static AlertWhere Of(string alert, string own)
    {
        if (alert.Equals(own, StringComparison.OrdinalIgnoreCase) || IsWhole(alert, own)) return AlertWhere.Concerns;
        var kind = KindOf(alert);
        return kind != Kind.Other && kind == KindOf(own) ? AlertWhere.Elsewhere : AlertWhere.MayConcern;
    }

    /// <summary>Codes of a whole state (NCZ000, NCZALL, SAME 037000) or of the whole country (SAME 000000).</summary>
    private static bool IsWhole(string alert, string own)
    {
        if (KindOf(own) == Kind.Same) return alert == "000000" || (KindOf(alert) == Kind.Same && alert[1..3] == own[1..3] && alert[3..] == "000");
        return KindOf(own) is Kind.Zone or Kind.County && alert.Length == 6
            && alert.StartsWith(own[..3], StringComparison.OrdinalIgnoreCase)
            && (alert[3..] == "000" || alert[3..].Equals("ALL", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>SAME codes with a first digit other than 0 mean a part of the county.</summary>
    private static bool IsPartOf(string alert, string own) =>
        KindOf(alert) == Kind.Same && KindOf(own) == Kind.Same && alert[0] != '0' && alert[1..] == own[1..];

    private static Kind KindOf(string code)
    {
        if (Same().IsMatch(code)) return Kind.Same;
        if (!Ugc().IsMatch(code)) return Kind.Other;
        return code[2] is 'Z' or 'z' ? Kind.Zone : Kind.County;
    }

    [GeneratedRegex("^[A-Z]{2}[CZ][0-9]{3}$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Ugc();

    [GeneratedRegex("^[0-9]{6}$")]
    private static partial Regex Same();
}
