using System.Numerics;
using System.Runtime.Intrinsics;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Looks from one place after another at the members of a storm. Holds the tables it fills, so that a further place
/// costs no memory: one for each thread that asks.
/// </summary>
public sealed class PlaceWinds
{
    private readonly StormMembers storm;
    private readonly MemberBlock block;
    private readonly float[][] arrivals;
    private readonly float[][] ends;

    // Of the block and wind at hand, by leg.
    private readonly uint[] near;
    private readonly Vector256<int>[] stepsFrom, stepsTo;

    public PlaceWinds(StormMembers storm)
    {
        this.storm = storm;
        block = new(storm);
        near = new uint[block.Legs];
        (stepsFrom, stepsTo) = (new Vector256<int>[block.Legs], new Vector256<int>[block.Legs]);
        arrivals = [.. storm.ThresholdsKt.Select(_ => new float[storm.Count])];
        ends = [.. storm.ThresholdsKt.Select(_ => new float[storm.Count])];
    }

    /// <summary>Every member's arrival and end at a place. Good until the next place is asked about, which overwrites it.</summary>
    public WindMembers At(GeoPoint place)
    {
        foreach (var table in arrivals) Array.Fill(table, float.NaN);
        foreach (var table in ends) Array.Fill(table, float.NaN);
        block.See(place);
        for (var b = 0; b < storm.Blocks; b++)
        {
            block.Take(b);
            var able = uint.MaxValue;

            // A wind that a weaker one does not come before cannot come either.
            for (var t = 0; t < arrivals.Length && able != 0; t++) able = Fill(t, able);
        }

        return new(
            storm.Track.Origin, storm.ThresholdsKt, arrivals, ends,
            MemberPeak.Later(storm, place, arrivals), storm.Track.HorizonHours);
    }

    /// <summary>First and last step of one wind for the eight members of the block; tells which of them have it.</summary>
    private uint Fill(int threshold, uint able)
    {
        var (arrived, ended) = (0u, 0u);
        var first = block.Block * StormMembers.Lanes;
        for (var leg = 0; leg < block.Legs; leg++)
        {
            near[leg] = block.Near(leg, threshold) & able;
            if (near[leg] == 0) continue;
            (stepsFrom[leg], stepsTo[leg]) = block.StepsNear(leg, threshold);
            for (var open = near[leg] & ~arrived; open != 0; open &= open - 1)
            {
                var lane = BitOperations.TrailingZeroCount(open);
                if (block.Leg(leg, lane, threshold).FirstStep(stepsFrom[leg][lane], stepsTo[leg][lane]) is not { } step) continue;
                arrivals[threshold][first + lane] = (float)(step * Ensemble.StepHours);
                arrived |= 1u << lane;
            }
        }

        for (var leg = block.Legs - 1; leg >= 0 && ended != arrived; leg--)
        {
            for (var open = near[leg] & arrived & ~ended; open != 0; open &= open - 1)
            {
                var lane = BitOperations.TrailingZeroCount(open);
                if (block.Leg(leg, lane, threshold).LastStep(stepsFrom[leg][lane], stepsTo[leg][lane]) is not { } step) continue;
                ends[threshold][first + lane] = (float)(step * Ensemble.StepHours);
                ended |= 1u << lane;
            }
        }

        return arrived;
    }
}
