using System.Buffers;
using System.Globalization;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.Cap;

/// <summary>Shapes of an alert area, written as latitude, longitude pairs in degrees.</summary>
internal static class CapShape
{
    private const int MostPlainDigits = 15;

    private static readonly double[] PowersOfTen = [.. Enumerable.Range(0, MostPlainDigits).Select(power => Math.Pow(10, power))];

    private static readonly SearchValues<char> Blanks = SearchValues.Create(" \t\r\n");

    /// <summary>
    /// "38.47,-120.14 38.34,-119.95 …" as a closed ring. A ring with a pair that cannot be read comes back empty, so that
    /// its area counts as undecidable and not as free of it.
    /// </summary>
    public static AlertPolygon Polygon(string text)
    {
        var ring = new List<GeoPoint>(text.Length / 12);
        foreach (var part in text.AsSpan().SplitAny(Blanks))
        {
            if (part.Start.Equals(part.End)) continue;
            if (Point(text.AsSpan()[part]) is not { } point) return new AlertPolygon([]);
            ring.Add(point);
        }

        return Closed(ring);
    }

    public static AlertPolygon Closed(List<GeoPoint> ring)
    {
        if (ring.Count > 0 && ring[0] != ring[^1]) ring.Add(ring[0]);
        return new AlertPolygon(ring);
    }

    /// <summary>"32.9525,-115.5527 25" with the radius in kilometres; an unreadable one has a radius of NaN.</summary>
    public static AlertCircle Circle(string text)
    {
        var parts = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return parts.Length == 2 && Point(parts[0]) is { } centre && Number(parts[1]) is { } radius
            ? new AlertCircle(centre, radius)
            : new AlertCircle(default, double.NaN);
    }

    /// <summary>Null when it is no place on the globe.</summary>
    public static GeoPoint? Point(double latDeg, double lonDeg) =>
        Math.Abs(latDeg) > 90 || Math.Abs(lonDeg) > 180 ? null : new GeoPoint(latDeg, lonDeg == -180 ? 180 : lonDeg);

    private static GeoPoint? Point(ReadOnlySpan<char> pair)
    {
        var comma = pair.IndexOf(',');
        return comma >= 0 && Number(pair[..comma]) is { } lat && Number(pair[(comma + 1)..]) is { } lon ? Point(lat, lon) : null;
    }

    private static double? Number(ReadOnlySpan<char> text) => Plain(text) ?? Any(text);

    /// <summary>
    /// The form that nearly all have, such as -120.14: so few digits that they and the power of ten are exact, and so is their quotient.
    /// Null leaves it to the search for any other form.
    /// </summary>
    private static double? Plain(ReadOnlySpan<char> text)
    {
        var negative = text.StartsWith('-');
        var digits = negative ? text[1..] : text;
        if (digits.Length is 0 or > MostPlainDigits) return null;
        var (value, decimals) = (0L, -1);
        foreach (var sign in digits)
        {
            if (sign == '.' && decimals < 0)
            {
                decimals = 0;
                continue;
            }

            if (!char.IsAsciiDigit(sign)) return null;
            value = (value * 10) + (sign - '0');
            if (decimals >= 0) decimals++;
        }

        if (decimals == 0 || digits.Length == 0 || digits[0] == '.') return null;
        var number = decimals < 0 ? value : value / PowersOfTen[decimals];
        return negative ? -number : number;
    }

    private static double? Any(ReadOnlySpan<char> text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
