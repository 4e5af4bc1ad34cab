using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>What the words behind a position, or the title, say of the system's nature; spelling slips included.</summary>
internal static class AdvisoryWords
{
    /// <summary>DISSIPATING is not yet dissipated: there is still wind.</summary>
    public static CycloneNature NatureOf(string words)
    {
        if (Has(words, "DISSIPATED") || Has(words, "SORBED") || Has(words, "MERGED")) return CycloneNature.Dissipated;
        if (Has(words, "REMNANT") || Has(words, "REMNT")) return CycloneNature.RemnantLow;

        // Seen misspelt as EXTRATOPICAL.
        return Has(words, "POST-TROP") || Has(words, "EXTRAT") ? CycloneNature.PostTropical : CycloneNature.Tropical;
    }

    public static bool SaysInland(string words) => Has(words, "INLAND");

    private static bool Has(string words, string part) => words.Contains(part, StringComparison.OrdinalIgnoreCase);
}
