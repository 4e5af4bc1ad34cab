using BenchmarkDotNet.Attributes;
using StormClock.Core.Hazards;
using StormClock.Core.Tests.Hazards;
using StormClock.Core.Units;

namespace StormClock.Benchmarks;

/// <summary>10,000 members of Ian, advisory 16, for 34, 50 and 64 kt.</summary>
public class WindBenchmarks
{
    private static readonly GeoPoint Tampa = new(27.96, -82.54);
    private static readonly double[] Thresholds = [34, 50, 64];

    // Of the eastern Gulf and the south-east, 12 degrees square: the storm comes near about half of them.
    private static readonly GeoPoint[] Places =
        [.. Enumerable.Range(0, 1000).Select(i => new GeoPoint(24 + i / 32 * 0.375, -88 + i % 32 * 0.375))];

    private readonly PlaceWinds winds = new(WindOutlook.Storm(SampleStorms.Ian16, Thresholds));

    /// <summary>From the advisory to every member's hours at a place in the storm's way; on one core.</summary>
    [Benchmark]
    public WindMembers OnePlace() => WindOutlook.At(SampleStorms.Ian16, Tampa, Thresholds);

    [Benchmark]
    public WindMembers OnePlaceBesideTheWay() => WindOutlook.At(SampleStorms.Ian16, new(25.79, -80.29), Thresholds);

    [Benchmark]
    public ReadOnlyMemory<float> OnePlaceWithPeaks() => WindOutlook.At(SampleStorms.Ian16, Tampa, Thresholds).PeakKt;

    /// <summary>One more place for a storm that is sampled already.</summary>
    [Benchmark]
    public WindMembers FurtherPlace() => winds.At(Tampa);

    [Benchmark]
    public StormMembers Sampling() => WindOutlook.Storm(SampleStorms.Ian16, Thresholds);

    /// <summary>Rows of the clock command; on one core.</summary>
    [Benchmark]
    public ClockRow[] ThousandPlacesOneCore() =>
        Array.ConvertAll(Places, place => ClockRow.Of(SampleStorms.Ian16, "place", place, winds.At(place)));

    /// <summary>The same on all cores, in pieces as the clock command does it.</summary>
    [Benchmark]
    public ClockRow[] ThousandPlacesAllCores()
    {
        var rows = new ClockRow[Places.Length];
        Parallel.For(0, 20, piece =>
        {
            var own = new PlaceWinds(WindOutlook.Storm(SampleStorms.Ian16, Thresholds));
            for (var p = piece * 50; p < (piece + 1) * 50; p++) rows[p] = ClockRow.Of(SampleStorms.Ian16, "place", Places[p], own.At(Places[p]));
        });
        return rows;
    }
}
