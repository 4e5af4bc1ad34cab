namespace StormClock.Core.Hazards;

/// <summary>
/// How far official forecasts have been off: spread, bias and persistence from one lead to the next, for the way along the
/// track, across it, the maximum wind and the size. Nautical miles, knots, and natural logarithm for the size.
/// </summary>
/// <param name="AlongBiasNmi">Positive: the storm was ahead of its forecast.</param>
/// <param name="WindBiasKt">Observed less forecast.</param>
/// <param name="AlongRho">Correlation of a lead's error with that of the next lead; one value fewer than leads.</param>
public sealed record ErrorStatistics(
    IReadOnlyList<double> AlongSigmaNmi,
    IReadOnlyList<double> AlongBiasNmi,
    IReadOnlyList<double> CrossSigmaNmi,
    IReadOnlyList<double> WindSigmaKt,
    IReadOnlyList<double> WindBiasKt,
    IReadOnlyList<double> SizeSigma,
    IReadOnlyList<double> AlongRho,
    IReadOnlyList<double> CrossRho,
    IReadOnlyList<double> WindRho,
    IReadOnlyList<double> SizeRho)
{
    /// <summary>Along, across, wind, size.</summary>
    internal const int Quantities = 4;

    /// <summary>Hours after the synoptic time to which the columns belong; between them errors go by straight lines.</summary>
    public static IReadOnlyList<double> LeadHours { get; } = [3, 12, 24, 36, 48, 60, 72, 96, 120];

    /// <summary>
    /// Official Atlantic forecasts 2014–2018 against best track, all stages, n = 1591 at 3 h to 738 at 120 h (science.md 3.2, D).
    /// 60 h is interpolated; size beyond 72 h is assumed.
    /// </summary>
    public static ErrorStatistics Atlantic2014To2018 { get; } = new(
        AlongSigmaNmi: [11.1706, 21.7970, 34.2204, 46.5799, 61.2879, 81.6028, 101.9177, 152.1233, 203.3215],
        AlongBiasNmi: [1.2318, 1.3637, 3.0897, 5.4231, 5.7636, 9.1905, 12.6173, 25.4663, 41.2284],
        CrossSigmaNmi: [10.0787, 20.8249, 30.5302, 42.0349, 54.2558, 66.8756, 79.4953, 110.2972, 160.3226],
        WindSigmaKt: [4.3608, 7.7927, 11.0083, 13.1858, 14.4195, 15.4738, 16.5282, 17.5225, 17.8239],
        WindBiasKt: [1.1748, 0.5591, 0.4903, 0.7158, 1.0000, 0.8820, 0.7640, 0.5444, 0.2439],
        SizeSigma: [0.2123, 0.2999, 0.3280, 0.3531, 0.3811, 0.3983, 0.4155, 0.4255, 0.4355],
        AlongRho: [0.6273, 0.7293, 0.7862, 0.7835, 0.8606, 0.8606, 0.7746, 0.8240],
        CrossRho: [0.6905, 0.6796, 0.7617, 0.7363, 0.7813, 0.7813, 0.6440, 0.7974],
        WindRho: [0.6804, 0.7129, 0.7903, 0.8166, 0.8068, 0.8068, 0.6897, 0.7102],
        SizeRho: [0.6210, 0.6462, 0.7405, 0.7729, 0.8157, 0.8157, 0.7000, 0.7000]);

    /// <summary>The forecast taken as written. Only the reduction from largest to mean reach stays, with its size bias.</summary>
    public static ErrorStatistics None { get; } = Zero();

    /// <summary>Spread used over spread measured, along and across (science.md 3.3, chosen on 2011–2015, D).</summary>
    public double TrackScale { get; init; } = 0.90;

    /// <summary>The same for the maximum wind (D).</summary>
    public double WindScale { get; init; } = 0.90;

    /// <summary>The same for the size (D).</summary>
    public double SizeScale { get; init; } = 0.70;

    /// <summary>Added to the logarithm of the size, from the mean bias of 2016–2018 (D).</summary>
    public double SizeBias { get; init; } = 0.06;

    /// <summary>Spread of one common factor on a member's whole track error; makes the tails heavier (science.md 3.3).</summary>
    public double MultiplierSigma { get; init; } = 0.25;

    /// <summary>Mean reach over the farthest reach in a quarter, which is what an advisory gives (science.md 2.2; value M).</summary>
    public double MeanReach { get; init; } = 0.85;

    /// <summary>
    /// Statistics for a storm by the basin in its id. Only the Atlantic is measured; the others are that with a factor on the
    /// track spread: eastern Pacific 0.95 (from the cones of 2023, R2), central Pacific 1.1 and other agencies 1.2 (C).
    /// </summary>
    /// <param name="stormId">Basin, number and year, e.g. <c>AL092022</c>.</param>
    public static ErrorStatistics For(string stormId)
    {
        var basin = stormId.Length >= 2 ? stormId[..2].ToUpperInvariant() : "";
        var factor = basin switch { "AL" => 1.0, "EP" => 0.95, "CP" => 1.1, _ => 1.2 };
        return Atlantic2014To2018 with { TrackScale = Atlantic2014To2018.TrackScale * factor };
    }

    private static ErrorStatistics Zero()
    {
        var leads = new double[LeadHours.Count];
        var steps = new double[LeadHours.Count - 1];
        return new(leads, leads, leads, leads, leads, leads, steps, steps, steps, steps);
    }
}
