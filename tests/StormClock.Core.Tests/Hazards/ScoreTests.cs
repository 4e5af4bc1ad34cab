using StormClock.Skill.Refit;
using StormClock.Skill.Score;

namespace StormClock.Core.Tests.Hazards;

/// <summary>
/// The skill of the wind outlook on forecasts that were issued, against what came (science.md 3.6), with the bounds set there and
/// statistics that have not seen the storm. Prints the table, as <c>StormClock.Skill score</c> does.
/// </summary>
public class ScoreTests(ITestOutputHelper output)
{
    // Enough by science.md 3.6; sampling error is then well under the differences looked at.
    private const int Members = 2000;

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Outlook_SetA_MeetsTheBar()
    {
        var rows = Rows("A");
        AssertBrier(rows[34], 24, 0.0165);
        AssertBrier(rows[34], 48, 0.0345);
        AssertBrier(rows[34], 72, 0.0510);
        AssertBrier(rows[34], 120, 0.0880);
        AssertBrier(rows[50], 48, 0.0166);
        AssertBrier(rows[64], 48, 0.0070);
        Assert.True(Math.Abs(rows[34].MeanChance(120) - rows[34].CameShare(120)) <= 0.02);
        Assert.True(SkillTally.TimeError(rows[34].Expected) <= 4.2);
        Assert.InRange(SkillTally.EarlierShare(rows[34].Arrived), 0.02, 0.10);
        var nate = rows[34].Arrived.Where(row => row.Storm == "AL162017").ToArray();
        Assert.NotEmpty(nate);
        Assert.True(SkillTally.EarlierShare(nate) <= 0.20);
    }

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Outlook_SetB_MeetsTheBar()
    {
        var rows = Rows("B");
        AssertBrier(rows[34], 24, 0.0235);
        AssertBrier(rows[34], 48, 0.0530);
        AssertBrier(rows[34], 72, 0.0880);
        AssertBrier(rows[34], 120, 0.1480);
        Assert.True(SkillTally.TimeError(rows[34].Expected) <= 4.6);
        Assert.InRange(SkillTally.EarlierShare(rows[34].Arrived), 0.02, 0.10);
        Assert.True(SkillTally.EarlierShare(rows[64].Arrived) <= 0.12);
    }

    private Dictionary<double, SkillTally> Rows(string name)
    {
        Shared.Folder("clock-cases");
        var set = ScoredSet.All.Single(one => one.Name == name);
        var rows = Scorer.Run(set.CasesPath, RefitCommand.LeavingOut(), Scorer.FirstMembers(Members));
        var tallies = Scorer.Thresholds.ToDictionary(threshold => threshold, threshold => new SkillTally(name, threshold, rows));
        foreach (var line in tallies.Values.SelectMany(SkillReport.Lines)) output.WriteLine(line);
        return tallies;
    }

    private static void AssertBrier(SkillTally tally, int lead, double bound) =>
        Assert.True(tally.Brier(lead) <= bound, $"{lead} h: {tally.Brier(lead):F4} above {bound}");
}
