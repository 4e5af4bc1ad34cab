namespace StormClock.Core.Loads;

/// <summary>What came of one storm for one thing in one state (tied and untied are two).</summary>
/// <param name="GustMps">Peak gust at the thing.</param>
/// <param name="Measured">The gust was measured nearby; else it is only the forecast's.</param>
public sealed record StormOutcome(double GustMps, bool Held, bool Measured);

/// <summary>
/// What is believed of the gust at which a thing fails, lognormal (science.md 5.5, C). A storm held far below it hardly moves it, so say
/// how many storms stand behind a figure.
/// </summary>
public sealed record StrengthBelief(double MedianMps, double SigmaLn, int Outcomes)
{
    private const double PriorSigmaLn = 0.30;
    private const double MeasuredBeta = 0.15;
    private const double ForecastBeta = 0.25;
    private const int GridPoints = 4001;
    private static readonly double LnLow = Math.Log(5);
    private static readonly double LnStep = (Math.Log(100) - LnLow) / (GridPoints - 1);

    /// <summary>Before any storm: what the formulas say.</summary>
    public static StrengthBelief Before(double medianMps) => new(medianMps, PriorSigmaLn, 0);

    /// <summary>Mean and spread after these outcomes, worked out on a grid over ln 5 to ln 100. Unchanged when they cannot be believed at
    /// all: no strength on the grid explains them.</summary>
    public StrengthBelief After(IReadOnlyList<StormOutcome> outcomes)
    {
        double sum = 0, first = 0, second = 0;
        var centre = Math.Log(MedianMps);
        for (var i = 0; i < GridPoints; i++)
        {
            var ln = LnLow + i * LnStep;
            var weight = Math.Exp(-Math.Pow((ln - centre) / SigmaLn, 2) / 2);
            for (var o = 0; o < outcomes.Count; o++) weight *= Likelihood(outcomes[o], ln);
            sum += weight;
            first += weight * (ln - centre);
            second += weight * (ln - centre) * (ln - centre);
        }

        if (!(sum > 0)) return this;
        var mean = first / sum;
        return new(Math.Exp(centre + mean), Math.Sqrt(Math.Max(0, second / sum - mean * mean)), Outcomes + outcomes.Count);
    }

    private static double Likelihood(StormOutcome outcome, double lnStrength)
    {
        var failed = Fragility.Chance(outcome.GustMps, Math.Exp(lnStrength), outcome.Measured ? MeasuredBeta : ForecastBeta);
        return outcome.Held ? 1 - failed : failed;
    }
}
