using System.Numerics;
using System.Runtime.Intrinsics;
using Eight = System.Runtime.Intrinsics.Vector256<float>;
using Quarters = System.Runtime.Intrinsics.Vector128<float>;

namespace StormClock.Core.Hazards;

/// <summary>
/// One member on the straight way between two points of the track, with the reach of one wind in each quarter; all linear in time
/// (science.md 1.3). Answers at which quarter-hour steps the wind is at the place, which lies at the origin; eight steps at once.
/// </summary>
/// <param name="StartHours">Lead of the first point.</param>
/// <param name="Hours">From the first point to the second.</param>
/// <param name="From">Centre at the first point, n mi east and north of the place.</param>
/// <param name="Way">From the first point to the second, n mi.</param>
/// <param name="ReachFrom">Reach at the first point toward NE, SE, SW and NW, n mi.</param>
/// <param name="ReachTo">The same at the second.</param>
internal readonly record struct MemberLeg(
    float StartHours, float Hours, (float X, float Y) From, (float X, float Y) Way, Quarters ReachFrom, Quarters ReachTo)
{
    private const int StepsAtOnce = StormMembers.Lanes;

    private static readonly Eight Ahead = Vector256.Create(0f, 1f, 2f, 3f, 4f, 5f, 6f, 7f);

    /// <summary>Step (quarters of an hour after the origin), of those from one to another, at which the wind first holds; null when it never does.</summary>
    public int? FirstStep(int from, int to)
    {
        for (var step = from; step <= to; step += StepsAtOnce)
        {
            var held = Held(step);
            if (to - step < StepsAtOnce - 1) held &= (2u << (to - step)) - 1;
            if (held != 0) return step + BitOperations.TrailingZeroCount(held);
        }

        return null;
    }

    /// <summary>Step at which the wind last holds; null when it never does.</summary>
    public int? LastStep(int from, int to)
    {
        for (var last = to; last >= from; last -= StepsAtOnce)
        {
            var step = last - (StepsAtOnce - 1);
            var held = Held(step);
            if (step < from) held &= uint.MaxValue << (from - step);
            if (held != 0) return step + BitOperations.Log2(held);
        }

        return null;
    }

    /// <summary>Which of eight steps in a row have the wind at the place: bit 0 is the first of them.</summary>
    private uint Held(int firstStep)
    {
        var hours = (Vector256.Create((float)firstStep) + Ahead) * (float)Ensemble.StepHours;
        var (reach, squared) = Toward((hours - Vector256.Create(StartHours)) * (1 / Hours));
        return Vector256.LessThan(squared, reach * reach).ExtractMostSignificantBits();
    }

    /// <summary>At eight shares of the leg: reach toward the place, smoothed over azimuth as in <see cref="QuadrantShape.Toward"/>, and distance squared.</summary>
    public (Eight Reach, Eight DistanceSquared) Toward(Eight share)
    {
        var (x, y) = (Vector256.Create(From.X) + share * Way.X, Vector256.Create(From.Y) + share * Way.Y);
        var growth = ReachTo - ReachFrom;
        var ne = Vector256.Create(ReachFrom[0]) + share * growth[0];
        var se = Vector256.Create(ReachFrom[1]) + share * growth[1];
        var sw = Vector256.Create(ReachFrom[2]) + share * growth[2];
        var nw = Vector256.Create(ReachFrom[3]) + share * growth[3];

        // The place lies on the other side of the centre than the centre of it.
        var (east, north) = (Vector256.LessThanOrEqual(x, Eight.Zero), Vector256.LessThanOrEqual(y, Eight.Zero));
        var (upper, lower) = (Vector256.ConditionalSelect(east, ne, nw), Vector256.ConditionalSelect(east, se, sw));
        var (upperAcross, lowerAcross) = (Vector256.ConditionalSelect(east, nw, ne), Vector256.ConditionalSelect(east, sw, se));
        var own = Vector256.ConditionalSelect(north, upper, lower);
        var acrossX = Vector256.ConditionalSelect(north, upperAcross, lowerAcross);
        var acrossY = Vector256.ConditionalSelect(north, lower, upper);

        var (absX, absY) = (Vector256.Abs(x), Vector256.Abs(y));
        var next = Vector256.ConditionalSelect(Vector256.LessThan(absX, absY), acrossX, acrossY);
        var squared = x * x + y * y;
        var inward = absX * absY * 2f / Vector256.Max(squared, Vector256.Create(float.Epsilon));
        return (inward * own + (Eight.One - inward) * (own + next) * 0.5f, squared);
    }
}
