using System.Runtime.Intrinsics;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>The strongest sustained marine wind of a member at the place, sampled around its closest approach.</summary>
internal static class MemberPeak
{
    private const int StepsAround = 2;
    private static readonly double[] WindsKt = [34, 50, 64];
    private static readonly Vector256<float> Around = Vector256.Create(-2f, -1f, 0f, 1f, 2f, 0f, 0f, 0f);

    /// <summary>
    /// Peaks to be worked out when first asked for. A storm that was not asked about these winds is then sampled again: that takes
    /// milliseconds, and keeping its members for every place would take megabytes.
    /// </summary>
    /// <param name="arrivals">By threshold of the storm, then member.</param>
    public static Lazy<float[]> Later(StormMembers storm, GeoPoint place, float[][] arrivals)
    {
        var (track, errors, draws, thresholdsKt) = (storm.Track, storm.Errors, storm.Draws, storm.ThresholdsKt);
        var enough = thresholdsKt.SequenceEqual(WindsKt) ? storm : null;
        return new(() => Of(enough ?? StormMembers.Of(track, WindsKt, errors, draws), place, thresholdsKt, arrivals));
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
            var reached = Reached(arrivals, m);
            var (leg, share) = block.Closest(lane);
            peaks[m] = reached < 0
                ? PeakOnLeg(storm, block, lane, place, leg, Vector256.Create(share), 1)
                : Math.Max(PeakAround(storm, block, lane, place, block.HoursAt(leg, share)), (float)thresholdsKt[reached]);
        }

        return peaks;
    }

    /// <summary>The strongest threshold that a member brings; −1 when it brings none.</summary>
    private static int Reached(float[][] arrivals, int member)
    {
        var reached = arrivals.Length - 1;
        while (reached >= 0 && float.IsNaN(arrivals[reached][member])) reached--;
        return reached;
    }

    /// <summary>The wind may be stronger a little before or after the closest approach, and there on the next leg.</summary>
    private static float PeakAround(StormMembers storm, MemberBlock block, int lane, GeoPoint place, float hours)
    {
        var peak = 0f;
        var (first, last) = (block.LegAt(hours - StepsAround * (float)Ensemble.StepHours), block.LegAt(hours + StepsAround * (float)Ensemble.StepHours));
        for (var leg = first; leg <= last; leg++)
        {
            var shares = block.SharesAt(leg, Vector256.Create(hours) + Around * (float)Ensemble.StepHours);
            peak = Math.Max(peak, PeakOnLeg(storm, block, lane, place, leg, shares, 2 * StepsAround + 1));
        }

        return peak;
    }

    /// <summary>Strongest wind at the first few of eight moments on a leg, knots.</summary>
    private static float PeakOnLeg(StormMembers storm, MemberBlock block, int lane, GeoPoint place, int leg, Vector256<float> shares, int count)
    {
        var maxKt = storm.MaxKt(block.Block);
        var (maxFrom, maxTo) = (maxKt[leg][lane], maxKt[leg + 1][lane]);
        var (reach34, squared) = block.Leg(leg, lane, 0).Toward(shares);
        var reach50 = block.Leg(leg, lane, 1).Toward(shares).Reach;
        var reach64 = block.Leg(leg, lane, 2).Toward(shares).Reach;
        var peak = 0.0;
        for (var i = 0; i < count; i++)
        {
            var max = maxFrom + shares[i] * (maxTo - maxFrom);
            if (max <= 0) continue;
            var profile = RadialProfile.Through(reach34[i], reach50[i], reach64[i], max, place.LatDeg);
            peak = Math.Max(peak, profile.WindKt(Math.Sqrt(squared[i])));
        }

        return (float)peak;
    }
}
