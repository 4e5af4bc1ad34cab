using System.Runtime.Intrinsics;
using Eight = System.Runtime.Intrinsics.Vector256<float>;

namespace StormClock.Core.Hazards;

/// <summary>
/// Mean reach of one wind along the track for members of any strength (science.md 3.4): the forecast reach, scaled with the member's
/// strength as climatology does, in part. That is tabulated by whole knots because every member asks.
/// </summary>
internal sealed class MemberReach
{
    private const int StrongestKt = 250;

    // How much of climatology's growth with strength a storm takes on; regressions gave 0.42 to 0.65 (D).
    private const double Growth = 0.55;

    // A wind that a member barely has covers half of its area's radius, all of it 6 kt above.
    private const float FadeKt = 6;

    private readonly float windKt;
    private readonly float[] usualByKt = new float[StrongestKt + 2];
    private readonly float[] overUsual;

    /// <param name="forecast">One for each point of the track.</param>
    public MemberReach(double windKt, ForecastReach[] forecast)
    {
        this.windKt = (float)windKt;
        for (var kt = 0; kt < usualByKt.Length; kt++) usualByKt[kt] = (float)Usual(windKt, kt);
        overUsual = Array.ConvertAll(forecast, reach => (float)(reach.MeanNmi / Usual(windKt, reach.AtMaxKt)));
    }

    /// <summary>At a point of the track for eight members, n mi; 0 where a member is too weak for this wind.</summary>
    public Eight MeanNmi(int point, Eight memberMaxKt)
    {
        var kt = Vector256.Min(memberMaxKt, Vector256.Create((float)StrongestKt));
        var whole = Vector256.ConvertToInt32(kt);
        var (below, above) = (Read(whole), Read(whole + Vector256<int>.One));
        var usual = below + (kt - Vector256.ConvertToSingle(whole)) * (above - below);
        var excess = memberMaxKt - Vector256.Create(windKt);
        var fade = Vector256.Min(Vector256.Create(0.5f) + excess * (0.5f / FadeKt), Eight.One);
        return Vector256.ConditionalSelect(Vector256.GreaterThanOrEqual(excess, Eight.Zero), overUsual[point] * usual * fade, Eight.Zero);
    }

    private Eight Read(Vector256<int> kt) => Vector256.Create(
        usualByKt[kt[0]], usualByKt[kt[1]], usualByKt[kt[2]], usualByKt[kt[3]],
        usualByKt[kt[4]], usualByKt[kt[5]], usualByKt[kt[6]], usualByKt[kt[7]]);

    /// <summary>What a storm takes on of climatology. Latitude cancels between a member and its forecast, so that any will do.</summary>
    private static double Usual(double windKt, double maxKt) =>
        Math.Pow(Climatology.Radius34Nmi(maxKt, 25) * Climatology.ShareOf34(windKt, maxKt), Growth);
}
