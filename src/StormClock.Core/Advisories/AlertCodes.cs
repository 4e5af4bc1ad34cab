namespace StormClock.Core.Advisories;

/// <summary>
/// The codes of an alert area, to be compared with those of a site. A list of codes can only say "not here" to a site that
/// has a code of the same kind to compare with.
/// </summary>
internal sealed class AlertCodes
{
    [Flags]
    private enum Kinds { None = 0, Zone = 1, County = 2, Same = 4 }

    private readonly HashSet<string> codes;
    private readonly string[] wholes;
    private readonly string[] parts;
    private readonly Kinds kinds;

    public AlertCodes(IReadOnlyList<AlertGeocode> area)
    {
        codes = area.Select(one => one.Code.Trim()).Where(code => code.Length > 0).ToHashSet(StringComparer.OrdinalIgnoreCase);
        wholes = [.. codes.Where(IsOfAWhole)];
        parts = [.. codes.Where(code => KindOf(code) == Kinds.Same && code[0] != '0')];
        kinds = codes.Aggregate(Kinds.None, (all, code) => all | KindOf(code));
    }

    public AlertWhere Where(IReadOnlyList<string> site)
    {
        var comparable = false;
        var partly = false;
        for (var i = 0; i < site.Count; i++)
        {
            var own = site[i].Trim();
            if (codes.Contains(own) || IsInAWhole(own)) return AlertWhere.Concerns;
            var kind = KindOf(own);
            comparable |= (kinds & kind) != Kinds.None;
            partly |= kind == Kinds.Same && HasAPart(own);
        }

        return partly || !comparable ? AlertWhere.MayConcern : AlertWhere.Elsewhere;
    }

    private bool IsInAWhole(string own)
    {
        foreach (var whole in wholes)
        {
            if (Covers(whole, own)) return true;
        }

        return false;
    }

    private bool HasAPart(string own)
    {
        foreach (var part in parts)
        {
            if (part.AsSpan(1).SequenceEqual(own.AsSpan(1))) return true;
        }

        return false;
    }

    /// <summary>Codes of a whole state (NCZ000, NCZALL, SAME 037000) or of the whole country (SAME 000000).</summary>
    private static bool IsOfAWhole(string code) =>
        code.Length == 6 && (code.EndsWith("000", StringComparison.Ordinal) || code.EndsWith("ALL", StringComparison.OrdinalIgnoreCase));

    private static bool Covers(string whole, string own)
    {
        var kind = KindOf(own);
        if (kind == Kinds.Same) return whole == "000000" || (KindOf(whole) == Kinds.Same && whole.AsSpan(1, 2).SequenceEqual(own.AsSpan(1, 2)));
        return kind != Kinds.None && whole.AsSpan(0, 3).Equals(own.AsSpan(0, 3), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>SAME has six digits, the first of which tells a part of the county where it is not 0; a zone is FLZ065, a county FLC071.</summary>
    private static Kinds KindOf(string code)
    {
        if (code.Length != 6 || !AreDigits(code.AsSpan(3))) return Kinds.None;
        if (AreDigits(code.AsSpan(0, 3))) return Kinds.Same;
        if (!char.IsAsciiLetter(code[0]) || !char.IsAsciiLetter(code[1])) return Kinds.None;
        return code[2] switch { 'Z' or 'z' => Kinds.Zone, 'C' or 'c' => Kinds.County, _ => Kinds.None };
    }

    private static bool AreDigits(ReadOnlySpan<char> text)
    {
        foreach (var letter in text)
        {
            if (!char.IsAsciiDigit(letter)) return false;
        }

        return true;
    }
}
