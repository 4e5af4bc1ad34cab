namespace StormClock.Core.Hazards;

/// <summary>
/// Mean reach of one wind at one point of the track for a member of any strength (science.md 3.4): the forecast reach, scaled with
/// the member's strength as climatology does, in part. Tabulated by whole knots because every member asks.
/// </summary>
internal sealed class MemberReach
{
    private const int StrongestKt = 250;

    // How much of climatology's growth with strength a storm takes on; regressions gave 0.42 to 0.65 (D).
    private const double Growth = 0.55;

    // A wind that a member barely has covers half of its area's radius, all of it 6 kt above.
    private const double FadeKt = 6;

    private readonly double windKt;
    private readonly double[] byKt = new double[StrongestKt + 2];

    public MemberReach(double windKt, ForecastReach forecast)
    {
        this.windKt = windKt;
        Shape = forecast.Shape;
        LargestShare = forecast.Shape.Largest;
        var usual = Usual(forecast.AtMaxKt);
        for (var kt = 0; kt < byKt.Length; kt++) byKt[kt] = forecast.MeanNmi * Math.Pow(Usual(kt) / usual, Growth);
    }

    public QuadrantShape Shape { get; }

    public double LargestShare { get; }

    /// <summary>n mi; 0 when the member is too weak for this wind.</summary>
    public double MeanNmi(double memberMaxKt)
    {
        if (memberMaxKt < windKt) return 0;
        var kt = Math.Min(memberMaxKt, StrongestKt);
        var below = (int)kt;
        var mean = byKt[below] + (kt - below) * (byKt[below + 1] - byKt[below]);
        var excess = memberMaxKt - windKt;
        return excess < FadeKt ? mean * (0.5 + 0.5 * excess / FadeKt) : mean;
    }

    /// <summary>Latitude cancels between a member and its forecast, so that any will do.</summary>
    private double Usual(double maxKt) => Climatology.Radius34Nmi(maxKt, 25) * Climatology.ShareOf34(windKt, maxKt);
}
