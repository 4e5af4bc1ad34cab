using StormClock.Core.Advisories;

namespace StormClock.Core.Hazards;

/// <summary>
/// A source that is older than it should be keeps its effect, but its times become less sure: their spread grows by half an hour with each
/// hour beyond its life (science.md 4.2, C).
/// </summary>
public static class Stale
{
    /// <summary>A full advisory comes every six hours.</summary>
    public static readonly Duration AdvisoryLife = Duration.FromHours(9);

    public static readonly Duration PointForecastLife = Duration.FromHours(12);

    private const double HoursPerHour = 0.5;

    // Another member's second normal: independent of what made the member.
    private const int OtherMember = 7001;

    public static WindMembers Widened(WindMembers members, Duration beyond, Draws draws)
    {
        if (beyond <= Duration.Zero || members.Count != draws.Members) return members;
        var sigma = HoursPerHour * beyond.TotalHours;
        var shifts = new float[members.Count];
        for (var m = 0; m < shifts.Length; m++) shifts[m] = (float)(Math.Round(4 * sigma * draws.Of((m + OtherMember) % draws.Members)[1]) / 4);
        return new(
            members.Origin, members.ThresholdsKt,
            [.. members.ThresholdsKt.Select(kt => Shifted(members.ArrivalHours(kt), shifts))], [.. members.ThresholdsKt.Select(kt => Shifted(members.EndHours(kt), shifts))],
            new Lazy<float[]>(() => members.PeakKt.ToArray()), members.HorizonHours);
    }

    /// <summary>How far a source has outlived its life; zero or less while it has not.</summary>
    public static Duration Beyond(Advisory source, Instant now) => now - source.Issued - (source is PointForecast ? PointForecastLife : AdvisoryLife);

    private static float[] Shifted(ReadOnlySpan<float> hours, float[] shifts)
    {
        var moved = new float[hours.Length];
        for (var m = 0; m < moved.Length; m++) moved[m] = hours[m] + shifts[m];
        return moved;
    }
}
