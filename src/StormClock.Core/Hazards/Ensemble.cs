using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Many ways in which a forecast may come out, as its office's past errors suggest, seen from one place (science.md 3.3 to 3.5).
/// The same input gives the same output to the last bit, on any number of threads.
/// </summary>
public static class Ensemble
{
    /// <summary>Members are looked at every quarter of an hour; passes shorter than that are missed.</summary>
    public const double StepHours = 0.25;

    /// <summary>Every member's arrival, end and peak at the place. For many places take <see cref="PlaceWinds"/>.</summary>
    /// <param name="thresholdsKt">Sustained marine wind, knots, ascending; below 34 kt too.</param>
    public static WindMembers Run(
        ForecastTrack track, GeoPoint place, IReadOnlyList<double> thresholdsKt, ErrorStatistics errors, Draws draws) =>
        new PlaceWinds(StormMembers.Of(track, thresholdsKt, errors, draws)).At(place);

    /// <summary>The forecast as written, as a single member, through the same steps.</summary>
    public static WindMembers Deterministic(ForecastTrack track, GeoPoint place, IReadOnlyList<double> thresholdsKt) =>
        Run(track, place, thresholdsKt, ErrorStatistics.None, Draws.Still);
}
