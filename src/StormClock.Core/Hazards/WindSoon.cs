namespace StormClock.Core.Hazards;

/// <summary>
/// One wind threshold at one place as it stands at an instant: only members whose wind is still to come or still blowing
/// count, so that a storm that has passed fades out of it.
/// </summary>
/// <param name="Chance">Share of members in which the wind is not over yet, 0 to 1.</param>
/// <param name="Earliest">Earliest reasonable arrival: 10 % of those members are sooner, and at least 15 % of the time left
/// before the likely one. Null when (almost) none is left.</param>
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

        var likely = At(times.Arrivals, 0.50);
        var margin = members.Count == 1 ? CarefulTimes.LoneSpread(likely, now) : Duration.Zero;
        return new(
            chance,
            CarefulTimes.Earliest(At(times.Arrivals, CarefulTimes.TenthShare) - margin, likely, now),
            likely,
            At(times.Arrivals, 0.90) + margin,
            At(times.Ends, 1 - AlmostNever) + margin);

        Instant At(ReadOnlySpan<float> sorted, double share) => members.Origin + Duration.FromHours(MemberTimes.Quantile(sorted, share));
    }
}
