using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Eight = System.Runtime.Intrinsics.Vector256<float>;
using Quarters = System.Runtime.Intrinsics.Vector128<float>;

namespace StormClock.Core.Hazards;

/// <summary>
/// Every member of one forecast, sampled once and seen from any number of places (science.md 3.3 and 3.4). Members lie in blocks of eight,
/// so that one processor instruction serves eight of them. Nothing changes after it is made: any number of threads may read it.
/// </summary>
public sealed class StormMembers
{
    /// <summary>Members in a block. Fixed, so that the results do not depend on the machine.</summary>
    internal const int Lanes = 8;

    private readonly Eight[] along;
    private readonly Eight[] cross;
    private readonly Eight[] maxKt;
    private readonly Eight[][] meanNmi;

    private StormMembers(ForecastTrack track, IReadOnlyList<double> thresholdsKt, ErrorStatistics errors, Draws draws)
    {
        (Track, ThresholdsKt, Errors, Draws) = (track, thresholdsKt, errors, draws);
        Blocks = (draws.Members + Lanes - 1) / Lanes;
        var forecasts = thresholdsKt.Select(wind => ForecastReach.Along(track, wind)).ToArray();
        var reaches = thresholdsKt.Select((wind, t) => new MemberReach(wind, forecasts[t])).ToArray();
        Shapes = Array.ConvertAll(forecasts, ofWind => Array.ConvertAll(ofWind, reach => Floats(reach.Shape)));
        (along, cross, maxKt) = (Table(), Table(), Table());
        meanNmi = Array.ConvertAll(reaches, _ => Table());
        Sample(reaches);
    }

    /// <summary>The winds asked about, sustained marine, knots, ascending.</summary>
    public IReadOnlyList<double> ThresholdsKt { get; }

    public int Count => Draws.Members;

    internal ForecastTrack Track { get; }

    internal ErrorStatistics Errors { get; }

    internal Draws Draws { get; }

    internal int Blocks { get; }

    /// <summary>By threshold and point: share of the mean reach in the NE, SE, SW and NW quarter.</summary>
    internal Quarters[][] Shapes { get; }

    private int Points => Track.Points.Count;

    /// <param name="thresholdsKt">Sustained marine wind, knots, ascending; below 34 kt too.</param>
    public static StormMembers Of(ForecastTrack track, IReadOnlyList<double> thresholdsKt, ErrorStatistics errors, Draws draws) =>
        new(track, thresholdsKt, errors, draws);

    /// <summary>How far the storm is ahead of its forecast, n mi, by point.</summary>
    internal ReadOnlySpan<Eight> AlongNmi(int block) => along.AsSpan(block * Points, Points);

    /// <summary>How far it is to the right of its forecast, n mi, by point.</summary>
    internal ReadOnlySpan<Eight> CrossNmi(int block) => cross.AsSpan(block * Points, Points);

    /// <summary>Maximum sustained wind, knots, by point.</summary>
    internal ReadOnlySpan<Eight> MaxKt(int block) => maxKt.AsSpan(block * Points, Points);

    /// <summary>Mean reach of one of the winds, n mi, by point.</summary>
    internal ReadOnlySpan<Eight> MeanNmi(int threshold, int block) => meanNmi[threshold].AsSpan(block * Points, Points);

    private void Sample(MemberReach[] reaches)
    {
        var sampler = new MemberSampler(Track, Errors);
        var path = new MemberPath(Points);
        var size = new Eight[Points];
        for (var block = 0; block < Blocks; block++)
        {
            var first = block * Lanes;
            for (var m = first; m < Math.Min(first + Lanes, Count); m++)
            {
                sampler.Fill(path, Draws.Of(m));
                for (var k = 0; k < Points; k++)
                {
                    var at = (block * Points + k) * Lanes + m - first;
                    Singles(along)[at] = (float)path.AlongNmi[k];
                    Singles(cross)[at] = (float)path.CrossNmi[k];
                    Singles(maxKt)[at] = (float)path.MaxKt[k];
                    Singles(size)[k * Lanes + m - first] = (float)path.Size[k];
                }
            }

            for (var t = 0; t < reaches.Length; t++)
            {
                for (var k = 0; k < Points; k++)
                {
                    var at = block * Points + k;
                    meanNmi[t][at] = reaches[t].MeanNmi(k, maxKt[at]) * size[k];
                }
            }
        }
    }

    private Eight[] Table() => new Eight[Blocks * Points];

    private static Span<float> Singles(Eight[] table) => MemoryMarshal.Cast<Eight, float>(table.AsSpan());

    private static Quarters Floats(QuadrantShape shape) =>
        Vector128.Create((float)shape.Ne, (float)shape.Se, (float)shape.Sw, (float)shape.Nw);
}
