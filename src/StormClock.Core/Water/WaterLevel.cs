using StormClock.Core.Units;

namespace StormClock.Core.Water;

/// <summary>A level that the water may reach, as somebody entered it.</summary>
/// <param name="Datum">What it is measured from, as written, e.g. <c>NAVD88</c>. A level without one means nothing.</param>
/// <param name="SurgeM">How much of it is surge, whose forecast is the least sure part.</param>
/// <param name="WavesM">Allowance for waves: 0.3 behind the first row of houses, 0 on an inland river (science.md 6, C).</param>
public sealed record WaterLevel(double LevelM, string Datum, double SurgeM = 0, double WavesM = 0)
{
    /// <summary>Lift things by this above the level (trade.md 6: two feet, C).</summary>
    public const double FreeboardM = 0.6;

    /// <summary>How unsure the level is, m (science.md 6): 0.2, and a quarter of the surge.</summary>
    public double SigmaM => Math.Sqrt(0.2 * 0.2 + 0.25 * SurgeM * (0.25 * SurgeM));

    /// <summary>Height to which things are lifted, m above the datum.</summary>
    public double LiftToM => LevelM + FreeboardM;

    /// <summary>Why heights on this datum cannot be compared with this level; null when they can.</summary>
    public string? WhyNot(string? datum)
    {
        if (string.IsNullOrWhiteSpace(Datum)) return "the water level names no datum";
        if (string.IsNullOrWhiteSpace(datum)) return $"the site names no datum, and the water level is above {Datum}";
        return string.Equals(Datum.Trim(), datum.Trim(), StringComparison.OrdinalIgnoreCase) ? null : $"the site measures from {datum}, the water level from {Datum}";
    }

    /// <summary>Chance, 0 to 1, that water reaches a foot at this height on the same datum.</summary>
    public double ChanceOfWetting(double footM) => ChanceOfWetting(footM, SigmaM);

    /// <summary>The same for a given spread: 1 − Φ((z − W − ω) / σ).</summary>
    public double ChanceOfWetting(double footM, double sigmaM) => 1 - Normal.Cdf((footM - LevelM - WavesM) / sigmaM);
}
