using System.Globalization;
using StormClock.Core.Hazards;
using StormClock.Skill.Refit;

namespace StormClock.Skill.Score;

/// <summary>Scores both sets and prints the table; a full run draws the reliability figure too.</summary>
public static class ScoreCommand
{
    private const string LeftOut = "left-out";
    private const string Earlier = "earlier";
    private static readonly string[] Kinds = [LeftOut, Earlier, "shipped"];
    private static readonly Lazy<Func<string, ErrorStatistics>> LazyLeavingOut = new(RefitCommand.LeavingOut);

    public static int Run(string[] options, TextWriter output, TextWriter faults)
    {
        var (members, every, statistics) = (Draws.DefaultMembers, 1, LeftOut);
        for (var i = 0; i < options.Length; i++)
        {
            var number = i + 1 < options.Length && int.TryParse(options[i + 1], CultureInfo.InvariantCulture, out var read) && read > 0 ? read : 0;
            switch (options[i])
            {
                case "--statistics" when i + 1 < options.Length && Kinds.Contains(options[i + 1]): (statistics, i) = (options[i + 1], i + 1); break;
                case "--members" when number > 0: (members, i) = (number, i + 1); break;
                case "--every" when number > 0: (every, i) = (number, i + 1); break;
                default:
                    faults.WriteLine($"{options[i]} is not understood: --members N, --every K (both above 0) or --statistics and one of {string.Join(", ", Kinds)}.");
                    return 1;
            }
        }

        var rows = ScoredSet.All.ToDictionary(set => set, set => Scorer.Run(set.CasesPath, Statistics(statistics, set), Scorer.FirstMembers(members), every));
        foreach (var line in ScoredSet.All.SelectMany(set => Report(set, rows[set]))) output.WriteLine(line);
        if (every == 1 && statistics == LeftOut && SharedData.Repository() is { } root)
        {
            var path = Path.Combine(root, "docs", "reliability.svg");
            File.WriteAllText(path, ReliabilityFigure.Svg([.. ScoredSet.All.Select(set => new SkillTally(set.Name, 34, rows[set]))]));
            output.WriteLine($"drawn: docs/{Path.GetFileName(path)}");
        }

        return 0;
    }

    private static Func<string, ErrorStatistics> Statistics(string kind, ScoredSet set)
    {
        var earlier = set.EarlierStatistics();
        return kind switch
        {
            LeftOut => LazyLeavingOut.Value,
            Earlier => _ => earlier,
            _ => ErrorStatistics.For,
        };
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
