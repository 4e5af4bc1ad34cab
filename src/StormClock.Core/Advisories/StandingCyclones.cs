using System.Globalization;

namespace StormClock.Core.Advisories;

/// <summary>Which advisory of each storm counts now.</summary>
internal static class StandingCyclones
{
    /// <summary>
    /// The newest of every storm: the highest number, of that number the latest issue, of that issue the last
    /// correction. It stands for five days; a last one only until its track ends.
    /// </summary>
    public static IEnumerable<CycloneAdvisory> Of(IEnumerable<CycloneAdvisory> known, Instant now) =>
        known
            .GroupBy(advisory => advisory.StormId, StringComparer.Ordinal)
            .Select(storm => storm.MaxBy(Order)!)
            .Where(newest => now <= newest.IssuedAt + AdvisoryLedger.LongestStanding)
            .Where(newest => !newest.Final || now <= TrackEnd(newest));

    private static (int Number, Instant Issued, bool Corrected, char Letter) Order(CycloneAdvisory advisory) =>
        (NumberOf(advisory.Number), advisory.IssuedAt, advisory.Corrected, advisory.CorrectionLetter);

    /// <summary>0 when it is no number.</summary>
    public static int NumberOf(string written) =>
        int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private static Instant TrackEnd(CycloneAdvisory advisory) =>
        advisory.Forecast.Count > 0 ? advisory.Forecast[^1].Valid : advisory.Now.Valid;
}
