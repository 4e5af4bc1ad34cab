using System.Globalization;

namespace StormClock.Core.Advisories;

/// <summary>Which advisory of each storm counts now.</summary>
internal static class StandingCyclones
{
    /// <summary>
    /// The newest of every storm: the number issued last, of that the last correction; a number mistyped must not hide what
    /// comes after it. It stands for five days; a last one only until its track ends.
    /// </summary>
    public static IEnumerable<CycloneAdvisory> Of(IEnumerable<CycloneAdvisory> known, Instant now) =>
        known
            .GroupBy(advisory => advisory.StormId, StringComparer.Ordinal)
            .Select(Newest)
            .Where(newest => now <= newest.IssuedAt + AdvisoryLedger.LongestStanding)
            .Where(newest => !newest.Final || now <= TrackEnd(newest));

    /// <summary>A correction stands in the place of what it corrects, however late it comes.</summary>
    private static CycloneAdvisory Newest(IEnumerable<CycloneAdvisory> storm) =>
        storm
            .GroupBy(advisory => advisory.Number, StringComparer.Ordinal)
            .MaxBy(number => number.Min(advisory => advisory.IssuedAt))!
            .MaxBy(advisory => (advisory.IssuedAt, advisory.Corrected, advisory.CorrectionLetter))!;

    /// <summary>0 when it is no number.</summary>
    public static int NumberOf(string written) =>
        int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private static Instant TrackEnd(CycloneAdvisory advisory) =>
        advisory.Forecast.Count > 0 ? advisory.Forecast[^1].Valid : advisory.Now.Valid;
}
