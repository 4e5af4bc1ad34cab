namespace StormClock.Skill.Score;

/// <summary>What the rows of one set and one wind amount to.</summary>
public sealed class SkillTally(string set, double thresholdKt, IEnumerable<Verified> rows)
{
    private readonly Verified[] rows = [.. rows.Where(row => row.ThresholdKt == thresholdKt)];

    public string Set => set;

    public double ThresholdKt => thresholdKt;

    public int Count => rows.Length;

    /// <summary>Cases in which the wind came and times had been given.</summary>
    public Verified[] Arrived => [.. rows.Where(row => row is { Arrival: not null, Early: not null })];

    /// <summary>Those of them in which it was more likely than not.</summary>
    public Verified[] Expected => [.. Arrived.Where(row => row.Chance[^1] >= 0.5)];

    /// <summary>Mean square of chance less outcome (1 or 0).</summary>
    public double Brier(int leadHours) => rows.Average(row => Square(row.Chance[At(leadHours)] - Came(row, leadHours)));

    public double OfficialBrier(int leadHours) => rows.Average(row => Square(row.Official[At(leadHours)] - Came(row, leadHours)));

    public double MeanChance(int leadHours) => rows.Average(row => row.Chance[At(leadHours)]);

    public double CameShare(int leadHours) => rows.Average(row => Came(row, leadHours));

    /// <summary>Mean of the likely time less what came, hours: negative is early.</summary>
    public static double TimeBias(IReadOnlyCollection<Verified> expected) => Mean(expected, row => row.Likely!.Value - row.Arrival!.Value);

    public static double TimeError(IReadOnlyCollection<Verified> expected) => Mean(expected, row => Math.Abs(row.Likely!.Value - row.Arrival!.Value));

    public static double EndError(IReadOnlyCollection<Verified> expected) =>
        Mean([.. expected.Where(row => row.Ended is not null)], row => Math.Abs(row.End!.Value - row.Ended!.Value));

    /// <summary>Share that came before the earliest reasonable time. Below 10 % by design.</summary>
    public static double EarlierShare(IReadOnlyCollection<Verified> arrived) => Mean(arrived, row => row.Arrival < row.Early ? 1 : 0);

    /// <summary>Share that came before nine members in ten. 10 % if the members are right.</summary>
    public static double TenthShare(IReadOnlyCollection<Verified> arrived) => Mean(arrived, row => row.Arrival < row.Tenth ? 1 : 0);

    /// <summary>Share that came after nine members in ten. 10 % if the members are right.</summary>
    public static double LaterShare(IReadOnlyCollection<Verified> arrived) => Mean(arrived, row => row.Arrival > row.Late ? 1 : 0);

    /// <summary>By tens of per cent: mean chance, share that came, and how many.</summary>
    public IEnumerable<(double Chance, double Came, int Count)> Reliability(int leadHours) =>
        rows.GroupBy(row => Math.Min(9, (int)(10 * row.Chance[At(leadHours)])))
            .OrderBy(bin => bin.Key)
            .Select(bin => (bin.Average(row => row.Chance[At(leadHours)]), bin.Average(row => Came(row, leadHours)), bin.Count()));

    private static double Came(Verified row, int leadHours) => row.Arrival <= leadHours ? 1 : 0;

    private static int At(int leadHours) => Array.IndexOf(Scorer.Leads, leadHours);

    private static double Square(double x) => x * x;

    private static double Mean(IReadOnlyCollection<Verified> of, Func<Verified, double> value) => of.Count == 0 ? double.NaN : of.Average(value);
}
