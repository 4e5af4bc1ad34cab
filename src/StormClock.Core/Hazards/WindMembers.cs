namespace StormClock.Core.Hazards;

/// <summary>
/// What every member of a forecast does at one place: when wind of each threshold first arrives, when it last ends, and
/// the peak. One member is a plain deterministic forecast, thousands are an ensemble; readers of this type need not know.
/// Times are hours after <see cref="Origin"/>; NaN means that the member never brings that wind within its forecast.
/// </summary>
public sealed class WindMembers
{
    private readonly float[][] arrivalHours;
    private readonly float[][] endHours;
    private readonly MemberTimes?[] arrived;
    private readonly Lazy<float[]> peaks;

    /// <param name="origin">The instant from which hours count: the synoptic time of the advisory.</param>
    /// <param name="thresholdsKt">Sustained marine wind, knots (1-min, 10 m), ascending.</param>
    /// <param name="arrivalHours">By threshold, then member.</param>
    /// <param name="endHours">By threshold, then member; NaN exactly where arrival is NaN.</param>
    /// <param name="peakKt">Highest sustained marine wind of each member at the place, knots.</param>
    /// <param name="horizonHours">Last lead that the forecast reaches; beyond it nothing is known.</param>
    public WindMembers(
        Instant origin, IReadOnlyList<double> thresholdsKt, float[][] arrivalHours, float[][] endHours, float[] peakKt, double horizonHours)
        : this(origin, thresholdsKt, arrivalHours, endHours, new Lazy<float[]>(peakKt), horizonHours)
    {
    }

    /// <summary>The same with peaks that are worked out when first asked for.</summary>
    internal WindMembers(
        Instant origin, IReadOnlyList<double> thresholdsKt, float[][] arrivalHours, float[][] endHours, Lazy<float[]> peakKt, double horizonHours)
    {
        Origin = origin;
        ThresholdsKt = thresholdsKt;
        this.arrivalHours = arrivalHours;
        this.endHours = endHours;
        arrived = new MemberTimes?[thresholdsKt.Count];
        peaks = peakKt;
        Count = arrivalHours[0].Length;
        HorizonHours = horizonHours;
    }

    public Instant Origin { get; }

    public IReadOnlyList<double> ThresholdsKt { get; }

    /// <summary>
    /// Highest sustained marine wind of each member at the place, knots. Worked out when first asked for, because arrivals are asked for
    /// far more often.
    /// </summary>
    public ReadOnlyMemory<float> PeakKt => peaks.Value;

    public double HorizonHours { get; }

    public int Count { get; }

    /// <summary>First hour of that wind by member; the threshold must be one of <see cref="ThresholdsKt"/>.</summary>
    public ReadOnlySpan<float> ArrivalHours(double thresholdKt) => arrivalHours[IndexOf(thresholdKt)];

    /// <summary>Last hour of that wind by member.</summary>
    public ReadOnlySpan<float> EndHours(double thresholdKt) => endHours[IndexOf(thresholdKt)];

    /// <summary>Members whose wind of that threshold is still to come or still blowing at an instant.</summary>
    public MemberTimes Unfinished(double thresholdKt, Instant now)
    {
        var index = IndexOf(thresholdKt);
        var hours = (now - Origin).TotalHours;
        var all = arrived[index] ??= MemberTimes.Of(arrivalHours[index], endHours[index], double.NegativeInfinity);
        return all.Ends.Length == 0 || all.Ends[0] >= hours ? all : MemberTimes.Of(arrivalHours[index], endHours[index], hours);
    }

    private int IndexOf(double thresholdKt)
    {
        for (var i = 0; i < ThresholdsKt.Count; i++)
        {
            if (ThresholdsKt[i] == thresholdKt) return i;
        }

        throw new ArgumentOutOfRangeException(nameof(thresholdKt), thresholdKt, "Not one of the thresholds computed.");
    }
}
