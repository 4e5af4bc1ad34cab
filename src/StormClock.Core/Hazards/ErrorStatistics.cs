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

    // Beyond these few forecasts stand behind the fits; the last value holds.
    private const double FastestKt = 30;
    private const double WeakestKt = 35;
    private const double StrongestKt = 130;

    private const string AnyOther = "*";

    private static readonly Dictionary<string, double[]> TrackSpread = ErrorStatisticsText.Rows(ErrorStatisticsText.Embedded("track-spread-by-basin.txt"));

    /// <summary>Hours after the synoptic time to which the columns belong; between them errors go by straight lines.</summary>
    public static IReadOnlyList<double> LeadHours { get; } = [3, 12, 24, 36, 48, 60, 72, 96, 120];

    /// <summary>
    /// Official Atlantic forecasts 2016–2025 against best track, as <c>StormClock.Skill refit</c> wrote them to
    /// <c>Data/errors-atlantic.txt</c> (D).
    /// </summary>
    public static ErrorStatistics Atlantic { get; } = ErrorStatisticsText.Read(ErrorStatisticsText.Embedded("errors-atlantic.txt"));

    /// <summary>The forecast taken as written. Only the reduction from largest to mean reach stays, with its size bias.</summary>
    public static ErrorStatistics None { get; } = Zero();

    /// <summary>Spread used over spread measured, along and across. Here and below: the value of science.md 3.3; the product's own is in its data file.</summary>
    public double TrackScale { get; init; } = 0.90;

    /// <summary>The same for the maximum wind.</summary>
    public double WindScale { get; init; } = 0.90;

    /// <summary>The same for the size.</summary>
    public double SizeScale { get; init; } = 0.70;

    /// <summary>Added to the logarithm of the size.</summary>
    public double SizeBias { get; init; } = 0.06;

    /// <summary>Spread of one common factor on a member's whole track error; makes the tails heavier (science.md 3.3).</summary>
    public double MultiplierSigma { get; init; } = 0.25;

    /// <summary>
    /// Forecast speed at which an error in time weighs as much, along the track, as an error in place: the spread there is
    /// √(place² + (time · speed)²). Null: the same spread at every speed.
    /// </summary>
    public double? EvenSpeedKt { get; init; }

    /// <summary>Forecast speed for which the spread and the bias along the track are tabulated, if they depend on it.</summary>
    public double UsualSpeedKt { get; init; } = 12;

    /// <summary>How steeply the spread of the size falls with the forecast wind, as a power. 0: not at all.</summary>
    public double SizeCalm { get; init; }

    /// <summary>Share of the spread in strength that is proportional to the forecast wind; the rest is the same for every storm.</summary>
    public double WindGrowth { get; init; }

    /// <summary>Forecast wind for which the spreads of size and strength are tabulated, if they depend on it.</summary>
    public double UsualWindKt { get; init; } = 60;

    /// <summary>Mean reach over the farthest reach in a quarter, which is what an advisory gives (science.md 2.2; value M).</summary>
    public double MeanReach { get; init; } = 0.85;

    /// <summary>
    /// Statistics for a storm by the basin in its id. Only the Atlantic is measured; the others are that with a factor on the
    /// track spread, from <c>Data/track-spread-by-basin.txt</c>.
    /// </summary>
    /// <param name="stormId">Basin, number and year, e.g. <c>AL092022</c>.</param>
    public static ErrorStatistics For(string stormId)
    {
        var basin = stormId.Length >= 2 ? stormId[..2].ToUpperInvariant() : AnyOther;
        var factor = TrackSpread.TryGetValue(basin, out var own) ? own : TrackSpread[AnyOther];
        return Atlantic with { TrackScale = Atlantic.TrackScale * factor[0] };
    }

    /// <summary>Spread along the track over that of the table, by forecast speed.</summary>
    public double AlongFactor(double speedKt)
    {
        if (EvenSpeedKt is not { } even) return 1;
        var speed = Math.Min(speedKt, FastestKt);
        return Math.Sqrt((even * even + speed * speed) / (even * even + UsualSpeedKt * UsualSpeedKt));
    }

    /// <summary>Bias along the track over that of the table: storms run ahead by a time, so by a way that grows with speed.</summary>
    public double AlongBiasFactor(double speedKt) => EvenSpeedKt is null ? 1 : Math.Min(speedKt, FastestKt) / UsualSpeedKt;

    /// <summary>Spread of the strength over that of the table, by forecast wind.</summary>
    public double WindFactor(double forecastKt) => 1 - WindGrowth + WindGrowth * Math.Clamp(forecastKt, WeakestKt, StrongestKt) / UsualWindKt;

    /// <summary>Spread of the size over that of the table, by forecast wind: strong storms keep their size, weak ones are hard to measure.</summary>
    public double SizeFactor(double forecastKt) => Math.Pow(UsualWindKt / Math.Clamp(forecastKt, WeakestKt, StrongestKt), SizeCalm);

    private static ErrorStatistics Zero()
    {
        var leads = new double[LeadHours.Count];
        var steps = new double[LeadHours.Count - 1];
        return new(leads, leads, leads, leads, leads, leads, steps, steps, steps, steps);
    }
}
