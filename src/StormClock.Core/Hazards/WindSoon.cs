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
        var times = members.Unfinished(thresholdKt, now);
        var chance = (double)times.Count / members.Count;
        if (chance < AlmostNever) return Never;

        var margin = members.Count == 1 ? LoneMargin(members.Origin + Duration.FromHours(times.Arrivals[0]), now) : Duration.Zero;
        return new(
            chance,
            At(times.Arrivals, 0.10) - margin,
            At(times.Arrivals, 0.50),
            At(times.Arrivals, 0.90) + margin,
            At(times.Ends, 1 - AlmostNever) + margin);

        Instant At(ReadOnlySpan<float> sorted, double share) => members.Origin + Duration.FromHours(MemberTimes.Quantile(sorted, share));
    }

    /// <summary>Stand-in for the spread that a single member cannot have: 15 % of what is left, at least 3 h (convention).</summary>
    private static Duration LoneMargin(Instant arrival, Instant now) => Duration.FromHours(Math.Max(3, 0.15 * (arrival - now).TotalHours));
}
