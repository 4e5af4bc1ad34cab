using System.Globalization;

namespace StormClock.Skill.Score;

/// <summary>The skill of a set in lines of text.</summary>
public static class SkillReport
{
    /// <summary>Observed arrival, or the likely time, in hours up to these.</summary>
    private static readonly double[] Until = [24, 48, 72, 120];

    public static IEnumerable<string> Lines(SkillTally skill)
    {
        yield return Text($"set {skill.Set}, {skill.ThresholdKt} kt, n = {skill.Count}");
        foreach (var lead in Scorer.Leads)
            yield return Text($"  {lead,3} h  came {skill.CameShare(lead):P1}  mean chance {skill.MeanChance(lead):P1}  Brier {skill.Brier(lead):F4}  official {skill.OfficialBrier(lead):F4}");

        var (arrived, expected) = (skill.Arrived, skill.Expected);
        yield return Text($"  likely time: mean abs {SkillTally.TimeError(expected):F2} h, bias {SkillTally.TimeBias(expected):F2} h (n = {expected.Length}); end mean abs {SkillTally.EndError(expected):F2} h");
        yield return "    by what came: " + ByHour(expected, row => row.Arrival!.Value);
        yield return "    by what was said: " + ByHour(expected, row => row.Likely!.Value);
        yield return Text($"  came before the earliest reasonable time {SkillTally.EarlierShare(arrived):P1}; before nine members in ten {SkillTally.TenthShare(arrived):P1}, after nine in ten {SkillTally.LaterShare(arrived):P1} (n = {arrived.Length})");
    }

    /// <summary>Each storm's share that came before the earliest reasonable time.</summary>
    public static IEnumerable<string> ByStorm(SkillTally skill)
    {
        yield return Text($"set {skill.Set}, {skill.ThresholdKt} kt, storm by storm");
        foreach (var storm in skill.Arrived.GroupBy(row => row.Storm).OrderBy(storm => storm.Key, StringComparer.Ordinal))
        {
            var (arrived, expected) = (storm.ToArray(), storm.Where(row => row.Chance[^1] >= 0.5).ToArray());
            yield return Text($"  {storm.Key,-16} n {arrived.Length,4}  before the earliest {SkillTally.EarlierShare(arrived),7:P1}  before nine in ten {SkillTally.TenthShare(arrived),7:P1}  likely time bias {SkillTally.TimeBias(expected),6:F1} h, mean abs {SkillTally.TimeError(expected),5:F1} h (n {expected.Length})");
        }
    }

    public static string Reliability(SkillTally skill, int leadHours) =>
        Text($"set {skill.Set}, {skill.ThresholdKt} kt by {leadHours} h, said -> came (n): ")
        + string.Join(", ", skill.Reliability(leadHours).Select(bin => Text($"{100 * bin.Chance:F0}->{100 * bin.Came:F0} ({bin.Count})")));

    private static string ByHour(IReadOnlyCollection<Verified> expected, Func<Verified, double> hour)
    {
        var from = 0.0;
        var parts = new List<string>();
        foreach (var until in Until)
        {
            var some = expected.Where(row => hour(row) > from && hour(row) <= until).ToArray();
            parts.Add(Text($"to {until} h {SkillTally.TimeBias(some):F1} / {SkillTally.TimeError(some):F1} ({some.Length})"));
            from = until;
        }

        return string.Join(", ", parts);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
