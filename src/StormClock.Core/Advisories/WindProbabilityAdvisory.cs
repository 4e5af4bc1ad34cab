using System.Globalization;

namespace StormClock.Core.Advisories;

/// <summary>Chance that one wind begins at a place in one period of the forecast, and that it has begun by the period's end.</summary>
/// <param name="UntilHour">End of the period, hours after the synoptic time: 12, 24, 36, 48, 72, 96 or 120.</param>
/// <param name="OnsetPercent">0 where the text says X: less than 1 percent.</param>
/// <param name="CumulativePercent">From the synoptic time on; 0 where the text says X.</param>
public readonly record struct PeriodChance(int UntilHour, int OnsetPercent, int CumulativePercent);

/// <summary>One row of the table.</summary>
/// <param name="Location">As written, often cut short or without its state, e.g. <c>ELIZABETH CTY</c>.</param>
/// <param name="WindKt">34, 50 or 64, sustained (1-min, 10 m).</param>
/// <param name="Periods">The seven periods in order of time.</param>
public sealed record WindProbabilityRow(string Location, int WindKt, IReadOnlyList<PeriodChance> Periods);

/// <summary>
/// The forecasters' own chances of wind at named places, issued with a forecast/advisory of the same number. A place has a row of 34
/// and 50 kt where its chance within five days is at least 3 percent, and of all three winds where that of 64 kt is at least 1
/// percent (R, the text itself); a row that is not there says only that the chance is below that.
/// </summary>
/// <param name="StormId">Basin, number and year, e.g. <c>AL092022</c>.</param>
/// <param name="StormName">As written, e.g. <c>IAN</c>.</param>
/// <param name="Number">Number of the advisory that it belongs to, as written.</param>
/// <param name="Synoptic">Time from which the periods count.</param>
/// <param name="Correction">Letter of a corrected re-issue (A first); null when it is none.</param>
/// <param name="Special">Issued off the usual hours.</param>
public sealed record WindProbabilityAdvisory(
    string StormId,
    string StormName,
    string Number,
    Instant IssuedAt,
    Instant Synoptic,
    IReadOnlyList<WindProbabilityRow> Rows,
    char? Correction = null,
    bool Special = false) : Advisory
{
    public override string Id =>
        string.Create(CultureInfo.InvariantCulture, $"{StormId}/{Number}/{IssuedAt:uuuu-MM-dd'T'HH:mm'Z'}/wind-probabilities{CorrectionPart}");

    public override Instant Issued => IssuedAt;

    public override string Title => $"{StormName} wind speed probability table {Number}";

    /// <summary>True when it was issued with this forecast/advisory.</summary>
    public bool BelongsTo(CycloneAdvisory advisory) => StormId == advisory.StormId && Number == advisory.Number;

    private string CorrectionPart => Correction is { } letter ? $"/corrected-{letter}" : "";
}
