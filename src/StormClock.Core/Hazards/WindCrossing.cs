namespace StormClock.Core.Hazards;

/// <summary>
/// When wind of one strength comes to a place and when it goes. Times but the last are given that it comes, and null when it (almost)
/// never does: in fewer than 0.5 % of members, or not in the only one.
/// </summary>
/// <param name="ThresholdKt">Sustained marine wind, knots.</param>
/// <param name="Chance">0 to 1, within the forecast.</param>
/// <param name="ChanceBy">The same by hours after the synoptic time.</param>
/// <param name="EarliestReasonable">One arrival in ten is sooner. Plan with this.</param>
/// <param name="MostLikely">Half of the arrivals are sooner. Beyond 72 h it is early, because arrivals after the last lead are cut off.</param>
/// <param name="Latest">Nine arrivals in ten are sooner.</param>
/// <param name="End">Half of the members that bring it are over it by then, as far as the forecast reaches.</param>
/// <param name="TotalTenPercent">When the chance over all members, those included in which it never comes, has risen to 10 %; null when it
/// stays below. For alarms; never before <paramref name="EarliestReasonable"/>.</param>
public sealed record WindCrossing(
    double ThresholdKt,
    double Chance,
    IReadOnlyDictionary<int, double> ChanceBy,
    Instant? EarliestReasonable,
    Instant? MostLikely,
    Instant? Latest,
    Instant? End,
    Instant? TotalTenPercent)
{
    // Arrivals of 64 kt came before the 10 % time twice as often as they should (science.md 3.6, D).
    private const double HurricaneKt = 64;
    private static readonly Duration HurricaneMargin = Duration.FromHours(3);

    private static readonly int[] Leads = [12, 24, 36, 48, 72, 96, 120];

    /// <summary>
    /// Summary of one threshold. With many members the earliest reasonable time lies at least 15 % of the time from now before the
    /// most likely one, and that of 64 kt and more 3 h earlier still. With a single member the earliest reasonable and the latest
    /// time are its arrival less and plus 15 % of the time from now, at least 3 h: a stand-in for the spread that it cannot show.
    /// </summary>
    public static WindCrossing Of(WindMembers members, double thresholdKt, Instant now)
    {
        var arrivals = MemberHours.InOrder(members.ArrivalHours(thresholdKt));
        var chance = (double)arrivals.Length / members.Count;
        var chanceBy = Leads.ToDictionary(lead => lead, lead => (double)CountUpTo(arrivals, lead) / members.Count);
        if (chance < WindSoon.AlmostNever) return new(thresholdKt, chance, chanceBy, null, null, null, null, null);

        var likely = At(arrivals, 0.5);
        var end = At(MemberHours.InOrder(members.EndHours(thresholdKt)), 0.5);
        if (members.Count == 1)
        {
            var spread = CarefulTimes.LoneSpread(likely, now);
            return new(thresholdKt, chance, chanceBy, likely - spread, likely, likely + spread, end, likely - spread);
        }

        var margin = thresholdKt >= HurricaneKt ? HurricaneMargin : Duration.Zero;
        var earliest = CarefulTimes.Earliest(At(arrivals, CarefulTimes.TenthShare), likely, now);
        return new(thresholdKt, chance, chanceBy, earliest - margin, likely, At(arrivals, 0.9), end, Total(arrivals, members.Count) - margin);

        Instant At(float[] sorted, double share) =>
            members.Origin + Duration.FromHours(sorted[(int)(share * (sorted.Length - 1))]);

        Instant? Total(ReadOnlySpan<float> sorted, int all) =>
            (all + 9) / 10 is var tenth && sorted.Length >= tenth ? members.Origin + Duration.FromHours(sorted[tenth - 1]) : null;
    }

    private static int CountUpTo(float[] sorted, double hours)
    {
        var count = 0;
        while (count < sorted.Length && sorted[count] <= hours) count++;
        return count;
    }
}
