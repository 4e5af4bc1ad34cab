using System.Globalization;
using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>
/// Where a cyclone is and how strong, from an advisory for the public. Between two full advisories these come as intermediate ones
/// (<c>12A</c>); they hold no forecast, so that they move a forecast but never take its place (science.md 4.1).
/// </summary>
/// <param name="StormId">Basin, number and year, e.g. <c>AL092022</c>; basin, name and year where the text has no id.</param>
/// <param name="Number">As written with the letter of an intermediate advisory, e.g. <c>12A</c>.</param>
/// <param name="MaxWindKt">1-min sustained at 10 m, knots, in steps of 5 as the office works; null when not given.</param>
/// <param name="MovingDeg">Direction it moves to, degrees from north; null when not given or nearly stationary.</param>
/// <param name="MovingKt">Knots; 0 when stationary, null when not given.</param>
/// <param name="Correction">Letter of a corrected re-issue (A first); null when it is none.</param>
public sealed record CyclonePosition(
    string StormId,
    string StormName,
    string Number,
    Instant IssuedAt,
    GeoPoint Centre,
    double? MaxWindKt,
    double? MovingDeg,
    double? MovingKt,
    char? Correction = null) : Advisory
{
    /// <summary>Issued between two full advisories.</summary>
    public bool Intermediate => Number.Length > 0 && char.IsAsciiLetter(Number[^1]);

    public override string Id =>
        string.Create(CultureInfo.InvariantCulture, $"{StormId}/{Number}/{IssuedAt:uuuu-MM-dd'T'HH:mm'Z'}/position{CorrectionPart}");

    public override Instant Issued => IssuedAt;

    public override string Title => $"{StormName} public advisory {Number}";

    private string CorrectionPart => Correction is { } letter ? $"/corrected-{letter}" : "";
}
