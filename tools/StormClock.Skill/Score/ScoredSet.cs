using StormClock.Core.Hazards;

namespace StormClock.Skill.Score;

/// <summary>A set of cases, and error statistics of years before it (science.md 3.6).</summary>
/// <param name="Cases">File in <c>clock-cases</c>.</param>
/// <param name="Earlier">File there with the statistics of years that end before the set begins.</param>
public sealed record ScoredSet(string Name, string Years, string Cases, string Earlier)
{
    public static IReadOnlyList<ScoredSet> All { get; } =
    [
        new("A", "2016–2018", "cases-2016-2018.txt.gz", "params9_1115.txt"),
        new("B", "2022–2025", "cases-2022-2025.txt.gz", "params9_1418.txt"),
    ];

    public string CasesPath => SharedData.Need(Path.Combine("clock-cases", Cases));

    /// <summary>Statistics that know nothing of the set.</summary>
    public ErrorStatistics EarlierStatistics() => ClockCase.Statistics(SharedData.Need(Path.Combine("clock-cases", Earlier)));
}
