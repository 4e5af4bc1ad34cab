using StormClock.Core.Advisories;

namespace StormClock.Core.Hazards;

/// <summary>
/// How far a wind reaches toward each quarter, smoothed over azimuth (science.md 2.2). The four values may be n mi or shares
/// of a mean. The quarters of an advisory already hold the asymmetry of motion; nothing is added for it.
/// </summary>
public readonly record struct QuadrantShape(double Ne, double Se, double Sw, double Nw)
{
    /// <summary>Share that a quarter given as zero keeps, so that size errors can move it (science.md 1.2, C).</summary>
    private const double Fill = 0.05;

    /// <summary>Right side over left side where no radii are known (science.md 2.2).</summary>
    private const double RightSideExcess = 0.25;

    public double Largest => Math.Max(Math.Max(Ne, Se), Math.Max(Sw, Nw));

    /// <summary>Shares of the mean, with the small fill; the mean of the shares is 1.</summary>
    public static QuadrantShape Of(QuadrantRadii radii)
    {
        var mean = radii.MeanNmi;
        return new(Share(radii.NeNmi), Share(radii.SeNmi), Share(radii.SwNmi), Share(radii.NwNmi));

        double Share(double radius) => (radius / mean + Fill) / (1 + Fill);
    }

    /// <summary>Shares for a storm without known radii: larger on the right of its way, on the left south of the equator.</summary>
    public static QuadrantShape FromHeading(double headingDeg, double latDeg)
    {
        var side = latDeg < 0 ? -1 : 1;
        return new(Share(45), Share(135), Share(225), Share(315));

        // The mean of 1 + 0.25 sin over a quarter is the value in its middle with the sine lowered by sin 45° / (π/4).
        double Share(double azimuthDeg) =>
            1 + side * RightSideExcess * (Math.Sin(Math.PI / 4) / (Math.PI / 4)) * Math.Sin((azimuthDeg - headingDeg) * (Math.PI / 180));
    }

    /// <summary>Reach toward a point east (x) and north (y) of the centre, in the unit of the four values.</summary>
    public double Toward(double x, double y)
    {
        var (east, north) = (x >= 0, y >= 0);
        var own = Quarter(east, north);
        var (absX, absY) = (Math.Abs(x), Math.Abs(y));
        var next = absX < absY ? Quarter(!east, north) : Quarter(east, !north);
        var squared = x * x + y * y;
        var inward = squared > 0 ? 2 * absX * absY / squared : 0;
        return inward * own + (1 - inward) * 0.5 * (own + next);
    }

    private double Quarter(bool east, bool north) => north ? (east ? Ne : Nw) : (east ? Se : Sw);
}
