using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>The strongest sustained marine wind of a member at the place, sampled around its closest approach.</summary>
internal static class MemberPeak
{
    private const int StepsAround = 2;
    private static readonly double[] WindsKt = [34, 50, 64];

    /// <summary>
    /// Peaks to be worked out when first asked for. The members are then sampled again: that takes milliseconds, and keeping them for
    /// every place would take megabytes.
    /// </summary>
    /// <param name="arrivals">By threshold of the storm, then member.</param>
    public static Lazy<float[]> Later(StormMembers storm, GeoPoint place, float[][] arrivals)
    {
        var (track, errors, draws, thresholdsKt) = (storm.Track, storm.Errors, storm.Draws, storm.ThresholdsKt);
        return new(() => Of(StormMembers.Of(track, WindsKt, errors, draws), place, thresholdsKt, arrivals));
    }

    private static float[] Of(StormMembers storm, GeoPoint place, IReadOnlyList<double> thresholdsKt, float[][] arrivals)
    {
        var block = new MemberBlock(storm);
        block.See(place);
        var peaks = new float[storm.Count];
        for (var m = 0; m < peaks.Length; m++)
        {
            var lane = m % StormMembers.Lanes;
            if (lane == 0) block.Take(m / StormMembers.Lanes);
            var reached = Array.FindLastIndex(arrivals, table => !float.IsNaN(table[m]));
            var peak = PeakKt(storm, block, lane, place, around: reached >= 0);
            peaks[m] = (float)(reached < 0 ? peak : Math.Max(peak, thresholdsKt[reached]));
        }

        return peaks;
    }

    /// <param name="around">Look at the steps before and after the closest approach too, where the wind may be stronger; not worth it for a member that brings none of the winds asked for.</param>
    private static double PeakKt(StormMembers storm, MemberBlock block, int lane, GeoPoint place, bool around)
    {
        var (closestLeg, closestShare) = block.Closest(lane);
        var peak = WindKt(closestLeg, closestShare);
        if (!around) return peak;

        var hours = block.HoursAt(closestLeg, closestShare);
        for (var step = -StepsAround; step <= StepsAround; step++)
        {
            if (step == 0) continue;
            var (leg, share) = block.LegAt(hours + step * (float)Ensemble.StepHours);
            peak = Math.Max(peak, WindKt(leg, share));
        }

        return peak;

        double WindKt(int leg, float share)
        {
            var maxKt = storm.MaxKt(block.Block);
            var max = maxKt[leg][lane] + share * (maxKt[leg + 1][lane] - maxKt[leg][lane]);
            if (max <= 0) return 0;
            var (leg34, leg50, leg64) = (block.Leg(leg, lane, 0), block.Leg(leg, lane, 1), block.Leg(leg, lane, 2));
            var (x, y) = leg34.CentreAt(share);
            return RadialProfile
                .Through(leg34.TowardPlace(share), leg50.TowardPlace(share), leg64.TowardPlace(share), max, place.LatDeg)
                .WindKt(Math.Sqrt(x * x + y * y));
        }
    }
}
