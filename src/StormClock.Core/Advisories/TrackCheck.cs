using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>Something in a forecast track that cannot be as it is written.</summary>
/// <param name="At">Time of the point at which it shows.</param>
public sealed record TrackFault(Instant At, string Reason);

/// <summary>What was found in a track.</summary>
/// <param name="Impossible">Nothing mends these: the advisory is not to be used.</param>
/// <param name="Mended">The advisory with what could be mended, each mend named in <see cref="CycloneAdvisory.Mends"/>.</param>
public sealed record TrackFindings(IReadOnlyList<TrackFault> Impossible, CycloneAdvisory Mended);

/// <summary>
/// Looks whether a track can be: points that go on in time, at a speed that storms have, winds and reaches that storms have, and a
/// stronger wind that nowhere reaches farther than a weaker one.
/// </summary>
public static class TrackCheck
{
    /// <summary>
    /// No storm moves on faster. The fastest of 3,940 steps in 587 forecast/advisories of 1991 to 2025 is 55 kt (D); 100 kt leaves room
    /// for the fastest on record (C).
    /// </summary>
    public const double FastestKt = 100;

    /// <summary>No storm is stronger: the strongest on record had 185 kt (M); this leaves room (C).</summary>
    public const double StrongestKt = 250;

    /// <summary>No wind of 34 kt reaches farther: the widest on record had some 500 n mi (M); this leaves room (C).</summary>
    public const double FarthestNmi = 1000;

    // Positions are rounded to a tenth of a degree, which over a short while would look like a great speed.
    private const double ShortestStepHours = 1;

    public static TrackFindings Of(CycloneAdvisory advisory)
    {
        var mends = new List<string>();
        var mended = advisory with
        {
            Now = InOrder(advisory.Now, mends),
            Forecast = [.. advisory.Forecast.Select(point => InOrder(point, mends))],
        };
        return new(Impossible(advisory), mended with { Mends = mends });
    }

    private static List<TrackFault> Impossible(CycloneAdvisory advisory)
    {
        var faults = new List<TrackFault>();
        foreach (var (from, to) in Steps(advisory))
        {
            // An advisory off the usual hours may give points that are past by now.
            if (to.Valid < from.Valid && from != advisory.Now) faults.Add(new(to.Valid, "the time is before that of the point above"));
            else if (from.Centre is { } here && to.Centre is { } there && Jump(here, there, to.Valid - from.Valid) is { } jump) faults.Add(new(to.Valid, jump));
        }

        foreach (var point in advisory.Forecast.Prepend(advisory.Now))
        {
            if (Beyond(point) is { } reason) faults.Add(new(point.Valid, reason));
        }

        return faults;
    }

    /// <summary>What of a point no storm has, in words.</summary>
    private static string? Beyond(CyclonePoint point)
    {
        if (point.MaxWindKt > StrongestKt) return FormattableString.Invariant($"a wind of {point.MaxWindKt:0} kt is beyond any storm; fetch it again");
        var farthest = new[] { point.Radii34, point.Radii50, point.Radii64 }.Max(radii => radii?.LargestNmi ?? 0);
        return farthest <= FarthestNmi ? null : FormattableString.Invariant($"a reach of {farthest:0} n mi is beyond any storm; fetch it again");
    }

    /// <summary>Each point with the one that follows it in the text.</summary>
    private static IEnumerable<(CyclonePoint From, CyclonePoint To)> Steps(CycloneAdvisory advisory)
    {
        if (advisory.Before is { } before) yield return (before, advisory.Now);
        var last = advisory.Now;
        foreach (var point in advisory.Forecast)
        {
            yield return (last, point);
            last = point;
        }
    }

    /// <summary>The way between two points in words when no storm can make it in the time.</summary>
    private static string? Jump(GeoPoint from, GeoPoint to, Duration time)
    {
        var way = GreatCircle.DistanceNmi(from, to);
        var hours = Math.Max(Math.Abs(time.TotalHours), ShortestStepHours);
        return way <= FastestKt * hours
            ? null
            : FormattableString.Invariant($"the storm would jump {way:0} n mi in {hours:0.#} h; a position or a time is wrong, fetch it again");
    }

    /// <summary>A weaker wind is taken to reach 1 n mi farther than a stronger one where the text has it the other way round (science.md 2.1).</summary>
    private static CyclonePoint InOrder(CyclonePoint point, List<string> mends)
    {
        var radii50 = AtLeast(point, point.Radii50, 50, point.Radii64, 64, mends);
        var radii34 = AtLeast(point, point.Radii34, 34, radii50 ?? point.Radii64, radii50 is null ? 64 : 50, mends);
        return radii34 == point.Radii34 && radii50 == point.Radii50 ? point : point with { Radii34 = radii34, Radii50 = radii50 };
    }

    private static QuadrantRadii? AtLeast(CyclonePoint point, QuadrantRadii? weaker, int weakerKt, QuadrantRadii? stronger, int strongerKt, List<string> mends)
    {
        if (weaker is not { } wide || stronger is not { } narrow) return weaker;
        var mended = new QuadrantRadii(
            Farther(wide.NeNmi, narrow.NeNmi), Farther(wide.SeNmi, narrow.SeNmi), Farther(wide.SwNmi, narrow.SwNmi), Farther(wide.NwNmi, narrow.NwNmi));
        if (mended != wide)
            mends.Add(FormattableString.Invariant($"{point.Valid:dd/HHmm'Z'}: {strongerKt} kt reaches farther than {weakerKt} kt; {weakerKt} kt is taken to reach 1 n mi beyond it"));
        return mended;

        static double Farther(double wide, double narrow) => narrow > wide ? narrow + 1 : wide;
    }
}
