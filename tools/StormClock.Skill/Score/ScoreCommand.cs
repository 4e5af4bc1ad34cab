using System.Globalization;
using StormClock.Core.Hazards;

namespace StormClock.Skill.Score;

/// <summary>Scores both sets and prints the table; a full run draws the reliability figure too.</summary>
public static class ScoreCommand
{
    public static int Run(string[] options, TextWriter output, TextWriter faults)
    {
        var (members, every, shipped) = (Draws.DefaultMembers, 1, false);
        for (var i = 0; i < options.Length; i++)
        {
            var number = i + 1 < options.Length && int.TryParse(options[i + 1], CultureInfo.InvariantCulture, out var read) && read > 0 ? read : 0;
            switch (options[i])
            {
                case "--shipped": shipped = true; break;
                case "--members" when number > 0: (members, i) = (number, i + 1); break;
                case "--every" when number > 0: (every, i) = (number, i + 1); break;
                default:
                    faults.WriteLine($"{options[i]} is not understood: --members N, --every K (both above 0) or --shipped.");
                    return 1;
            }
        }

        var rows = ScoredSet.All.ToDictionary(set => set, set => RowsOf(set, members, every, shipped));
        foreach (var line in ScoredSet.All.SelectMany(set => Report(set, rows[set]))) output.WriteLine(line);
        if (every == 1 && !shipped && SharedData.Repository() is { } root)
        {
            var path = Path.Combine(root, "docs", "reliability.svg");
            File.WriteAllText(path, ReliabilityFigure.Svg([.. ScoredSet.All.Select(set => new SkillTally(set.Name, 34, rows[set]))]));
            output.WriteLine($"drawn: docs/{Path.GetFileName(path)}");
        }

        return 0;
    }

    private static IReadOnlyList<Verified> RowsOf(ScoredSet set, int members, int every, bool shipped)
    {
        var earlier = set.EarlierStatistics();
        return Scorer.Run(set.CasesPath, storm => shipped ? ErrorStatistics.For(storm) : earlier, Scorer.FirstMembers(members), every);
    }

    private static IEnumerable<string> Report(ScoredSet set, IReadOnlyList<Verified> rows)
    {
        var tallies = Array.ConvertAll(Scorer.Thresholds, threshold => new SkillTally(set.Name, threshold, rows));
        return tallies.SelectMany(SkillReport.Lines)
            .Concat([SkillReport.Reliability(tallies[0], 48), SkillReport.Reliability(tallies[0], 120)])
            .Concat(SkillReport.ByStorm(tallies[0]))
            .Concat(SkillReport.ByStorm(tallies[2]));
    }
}
