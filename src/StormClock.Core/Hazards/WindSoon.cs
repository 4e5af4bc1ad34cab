namespace StormClock.Core.Hazards;

/// <summary>
/// One wind threshold at one place as it stands at an instant: only members whose wind is still to come or still blowing
/// count, so that a storm that has passed fades out of it.
/// </summary>
/// <param name="Chance">Share of members in which the wind is not over yet, 0 to 1.</param>
/// <param name="Earliest">Earliest reasonable arrival: 10 % of those members are sooner. Null when (almost) none is left.</param>
/// <param name="Likely">Half of those members are sooner.</param>
/// <param name="Latest">90 % of those members are sooner.</param>
/// <param name="LastEnd">When the wind is over in all but 1 of 200 members; null when none is left.</param>
public sealed record WindSoon(double Chance, Instant? Earliest, Instant? Likely, Instant? Latest, Instant? LastEnd)
{
    /// <summary>Fewer members than this is "it (almost) never comes" (convention).</summary>
    public const double AlmostNever = 0.005;

    public static WindSoon Never { get; } = new(0, null, null, null, null);

    public static WindSoon At(WindMembers members, double thresholdKt, Instant now)
    {
        var (arrivals, ends) = Unfinished(members, thresholdKt, (now - members.Origin).TotalHours);
        var chance = (double)arrivals.Length / members.Count;
        if (chance < AlmostNever) return Never;

        Instant At(float hours) => members.Origin + Duration.FromHours(hours);
        var margin = members.Count == 1 ? SingleMemberMargin(At(arrivals[0]), now) : Duration.Zero;
        return new(
            chance,
            At(Quantile(arrivals, 0.10)) - margin,
            At(Quantile(arrivals, 0.50)),
            At(Quantile(arrivals, 0.90)) + margin,
            At(Quantile(ends, 1 - AlmostNever)) + margin);
    }

    /// <summary>Stand-in for the spread that a single member cannot have: 15 % of what is left, at least 3 h (convention).</summary>
    private static Duration SingleMemberMargin(Instant arrival, Instant now) =>
        Duration.FromHours(Math.Max(3, 0.15 * (arrival - now).TotalHours));

    private static (float[] Arrivals, float[] Ends) Unfinished(WindMembers members, double thresholdKt, double nowHours)
    {
        var arrivals = new List<float>();
        var ends = new List<float>();
        var allArrivals = members.ArrivalHours(thresholdKt);
        var allEnds = members.EndHours(thresholdKt);
        for (var i = 0; i < allArrivals.Length; i++)
        {
            if (float.IsNaN(allArrivals[i]) || allEnds[i] < nowHours) continue;
            arrivals.Add(allArrivals[i]);
            ends.Add(allEnds[i]);
        }

        arrivals.Sort();
        ends.Sort();
        return ([.. arrivals], [.. ends]);
    }

    private static float Quantile(float[] sorted, double share) =>
        sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
