using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Worth;

/// <summary>
/// The strongest gust that each member brings to a site, thinned to a few equally likely ones: 3 s, at 10 m in the open, m/s, ascending.
/// </summary>
public sealed record PeakGusts(IReadOnlyList<double> At10MMps)
{
    /// <summary>More would cost time and tell nothing new.</summary>
    public const int Most = 100;

    // Fewer members than these say nothing about the strength of the wind that they bring.
    private const int LeastMembers = 50;

    /// <summary>Nine in ten stay below.</summary>
    public double HighMps => At10MMps[(int)(0.9 * (At10MMps.Count - 1))];

    public double MiddleMps => At10MMps[(At10MMps.Count - 1) / 2];

    /// <summary>One in ten stays below.</summary>
    public double LowMps => At10MMps[(int)(0.1 * (At10MMps.Count - 1))];

    /// <summary>
    /// Of the members that bring 34 kt, because work is valued as if the storm comes (science.md 3.1 and 8.1); of all where hardly one does.
    /// </summary>
    public static PeakGusts GivenGale(WindMembers members)
    {
        var arrivals = members.ArrivalHours(Wind.GaleKt);
        var all = members.PeakKt.Span;
        var peaks = new List<float>(members.Count);
        for (var m = 0; m < members.Count; m++)
        {
            if (!float.IsNaN(arrivals[m])) peaks.Add(all[m]);
        }

        if (peaks.Count < Math.Min(LeastMembers, members.Count)) peaks = [.. members.PeakKt.ToArray()];
        peaks.Sort();
        var count = Math.Min(Most, peaks.Count);
        return new([.. Enumerable.Range(0, count).Select(i => WindChain.GustAt10M(Wind.KtToMps(peaks[(int)((i + 0.5) / count * peaks.Count)])))]);
    }
}
