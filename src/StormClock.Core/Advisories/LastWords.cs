namespace StormClock.Core.Advisories;

/// <summary>What ends a threat by the forecasters' own word.</summary>
public static class LastWords
{
    /// <summary>
    /// The newest last advisory on any storm, within the time an advisory may stand; it is still the storm's last word when its
    /// forecast track has ended.
    /// </summary>
    public static CycloneAdvisory? LastFinal(this AdvisoryLedger ledger, Instant now) =>
        ledger.All
            .Select(heard => heard.Advisory)
            .OfType<CycloneAdvisory>()
            .LastOrDefault(advisory => advisory.Final && advisory.Issued <= now && now - advisory.Issued <= AdvisoryLedger.LongestStanding);

    /// <summary>A watch or warning of wind.</summary>
    public static bool IsWind(this AlertBearing bearing) =>
        bearing is >= AlertBearing.TropicalStormWatch and <= AlertBearing.WindWarning;
}
