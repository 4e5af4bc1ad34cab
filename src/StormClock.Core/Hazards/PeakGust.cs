using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Peak gust (3-s) that a thing meets in the whole of a forecast, over all members, those included that stay calm. m/s.
/// </summary>
/// <param name="LowMps">One member in ten stays below.</param>
/// <param name="MedianMps">Half of the members stay below.</param>
/// <param name="HighMps">Nine members in ten stay below.</param>
public sealed record PeakGust(double LowMps, double MedianMps, double HighMps)
{
    /// <summary>
    /// For a thing at a height above ground with its terrain and shelter (science.md 2.3, 2.4). The gust factor is the one for
    /// planning, so that the result leans to the strong side.
    /// </summary>
    /// <param name="heightM">Middle of the thing, metres; held at 1 m below that.</param>
    public static PeakGust At(WindMembers members, double heightM, Terrain terrain, Exposure exposure)
    {
        var peaks = members.PeakKt.ToArray();
        Array.Sort(peaks);
        return new(Gust(0.10), Gust(0.50), Gust(0.90));

        double Gust(double share) => WindChain.GustAtHeight(
            WindChain.GustAt10M(Wind.KtToMps(MemberTimes.Quantile(peaks, share))), heightM, terrain, exposure);
    }

    /// <summary>To a tenth of a metre per second, which is more than is known.</summary>
    public PeakGust Rounded() => new(Math.Round(LowMps, 1), Math.Round(MedianMps, 1), Math.Round(HighMps, 1));
}
