using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>Farthest reach of a wind speed in each quarter of the compass around the centre, nautical miles.</summary>
public readonly record struct QuadrantRadii(double NeNmi, double SeNmi, double SwNmi, double NwNmi)
{
    public double MeanNmi => (NeNmi + SeNmi + SwNmi + NwNmi) / 4;

    public double LargestNmi => Math.Max(Math.Max(NeNmi, SeNmi), Math.Max(SwNmi, NwNmi));
}

/// <summary>What the forecaster calls the system at a point.</summary>
public enum CycloneNature
{
    Tropical,
    PostTropical,
    RemnantLow,
    Dissipated,
}

/// <summary>
/// The cyclone at one moment, as written. A radius that the text does not give stays null: it may mean zero or
/// unknown, which only the hazard room may decide (science.md 1.2).
/// </summary>
/// <param name="Valid">The moment the point stands for.</param>
/// <param name="Centre">Null only when <paramref name="Nature"/> is Dissipated and no position is given.</param>
/// <param name="MaxWindKt">1-min sustained at 10 m, knots; null when not given.</param>
/// <param name="GustKt">Knots; null when not given.</param>
/// <param name="Radii34">Radii of 34 kt wind, null when the line is absent.</param>
/// <param name="OverLand">The text says INLAND.</param>
public sealed record CyclonePoint(
    Instant Valid,
    GeoPoint? Centre,
    double? MaxWindKt,
    double? GustKt,
    QuadrantRadii? Radii34,
    QuadrantRadii? Radii50,
    QuadrantRadii? Radii64,
    CycloneNature Nature = CycloneNature.Tropical,
    bool OverLand = false);

/// <summary>One full forecast/advisory of a tropical cyclone: where it is, how strong, and where it is forecast to be.</summary>
/// <param name="StormId">Basin, number and year, e.g. <c>AL092022</c>.</param>
/// <param name="StormName">As written, e.g. <c>IAN</c> or <c>SEVENTEEN</c>.</param>
/// <param name="Number">Advisory number as written, e.g. <c>16</c>.</param>
/// <param name="IssuedAt">From the header line (0300 UTC TUE SEP 27 2022).</param>
/// <param name="Synoptic">Nominal time from which lead hours count: the newest of 00, 06, 12, 18 UTC at or before issue.</param>
/// <param name="Now">Position, wind and radii at issue.</param>
/// <param name="Before">Position at the synoptic time when the text gives it ("CENTER WAS LOCATED NEAR").</param>
/// <param name="Forecast">Forecast and outlook points in order of time.</param>
/// <param name="Corrected">A corrected re-issue of the same number.</param>
/// <param name="Special">A special advisory, off the usual hours.</param>
/// <param name="Potential">A potential tropical cyclone.</param>
/// <param name="Final">The text says that it is the last one issued on this system.</param>
public sealed record CycloneAdvisory(
    string StormId,
    string StormName,
    string Number,
    Instant IssuedAt,
    Instant Synoptic,
    CyclonePoint Now,
    CyclonePoint? Before,
    IReadOnlyList<CyclonePoint> Forecast,
    bool Corrected = false,
    bool Special = false,
    bool Potential = false,
    bool Final = false) : Advisory
{
    /// <summary>Which correction, when <see cref="Corrected"/>: A is the first (CCA in the heading), B the second.</summary>
    public char CorrectionLetter { get; init; } = 'A';

    /// <summary>What of the text had to be mended before use, a sentence each; mostly empty. See <see cref="TrackCheck"/>.</summary>
    public IReadOnlyList<string> Mends { get; init; } = [];

    public override string Id => $"{StormId}/{Number}/{IssuedAt:uuuu-MM-dd'T'HH:mm'Z'}{CorrectionPart}";

    public override Instant Issued => IssuedAt;

    public override string Title => $"{StormName} advisory {Number}";

    private string CorrectionPart => (Corrected, CorrectionLetter) switch
    {
        (false, _) => "",
        (true, 'A') => "/corrected",
        _ => $"/corrected-{CorrectionLetter}",
    };
}
