using NodaTime.Text;
using StormClock.Core.Advisories;

namespace StormClock.Core.Hazards;

/// <summary>
/// What one advisory means at one place, as the <c>clock</c> command writes it in JSON (product.md 4): with camel-case names
/// these records are that shape.
/// </summary>
/// <param name="Storm">Storm id, e.g. <c>AL092022</c>.</param>
/// <param name="Advisory">Advisory number as written.</param>
/// <param name="Issued">UTC, ISO 8601 with Z.</param>
public sealed record ClockRow(string Storm, string Advisory, string Issued, string Place, IReadOnlyList<ClockWind> Wind)
{
    /// <summary>The winds that are reported, knots sustained.</summary>
    public static IReadOnlyList<double> ThresholdsKt { get; } = [34, 50, 64];

    /// <param name="members">Of this advisory at this place, with at least <see cref="ThresholdsKt"/>.</param>
    public static ClockRow Of(CycloneAdvisory advisory, string place, WindMembers members) => new(
        advisory.StormId,
        advisory.Number,
        InstantPattern.General.Format(advisory.IssuedAt),
        place,
        [.. ThresholdsKt.Select(threshold => ClockWind.Of(WindCrossing.Of(members, threshold, advisory.IssuedAt)))]);
}

/// <param name="Chance">0 to 1, to four places.</param>
/// <param name="ChanceBy">The same by hours after the synoptic time.</param>
/// <param name="EarliestReasonable">This and the next three: UTC, ISO 8601 with Z; null when the wind (almost) never comes.</param>
public sealed record ClockWind(
    double ThresholdKt,
    double Chance,
    IReadOnlyDictionary<string, double> ChanceBy,
    string? EarliestReasonable,
    string? MostLikely,
    string? Latest,
    string? End)
{
    internal static ClockWind Of(WindCrossing crossing) => new(
        crossing.ThresholdKt,
        Rounded(crossing.Chance),
        crossing.ChanceBy.ToDictionary(by => by.Key.ToString(System.Globalization.CultureInfo.InvariantCulture), by => Rounded(by.Value)),
        Text(crossing.EarliestReasonable),
        Text(crossing.MostLikely),
        Text(crossing.Latest),
        Text(crossing.End));

    private static double Rounded(double chance) => Math.Round(chance, 4);

    private static string? Text(Instant? when) => when is { } known ? InstantPattern.General.Format(known) : null;
}
