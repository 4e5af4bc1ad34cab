using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>The strongest sustained marine wind of a member at the place, sampled around its closest approach.</summary>
internal sealed class MemberPeak(ForecastTrack track, GeoPoint place)
{
    private const int StepsAround = 2;

    private readonly MemberWind wind34 = new(track, 34);
    private readonly MemberWind wind50 = new(track, 50);
    private readonly MemberWind wind64 = new(track, 64);

    /// <summary>Knots.</summary>
    /// <param name="around">Look to both sides of the closest approach too, where the wind may be stronger; not worth it for a member that brings none of the winds asked for.</param>
    public double WindKt(MemberPath path, bool around)
    {
        wind34.Settle(path);
        wind50.Settle(path);
        wind64.Settle(path);

        var (leg, share) = path.Closest;
        var peak = At(path, leg, share);
        if (!around) return peak;

        var stepShare = Ensemble.StepHours / (path.LeadHours[leg + 1] - path.LeadHours[leg]);
        for (var step = -StepsAround; step <= StepsAround; step++)
        {
            if (step != 0) peak = Math.Max(peak, At(path, leg, Math.Clamp(share + step * stepShare, 0, 1)));
        }

        return peak;
    }

    private double At(MemberPath path, int leg, double share)
    {
        var (x, y) = path.At(leg, share);
        var maxKt = path.MaxKt[leg] + share * (path.MaxKt[leg + 1] - path.MaxKt[leg]);
        if (maxKt <= 0) return 0;
        var profile = RadialProfile.Through(
            wind34.TowardPlace(leg, share, x, y), wind50.TowardPlace(leg, share, x, y), wind64.TowardPlace(leg, share, x, y), maxKt, place.LatDeg);
        return profile.WindKt(Math.Sqrt(x * x + y * y));
    }
}
