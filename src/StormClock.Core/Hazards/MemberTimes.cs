namespace StormClock.Core.Hazards;

/// <summary>Arrivals and ends of one threshold over the members that have them, each sorted, hours after the members' origin.</summary>
public sealed class MemberTimes
{
    private readonly float[] arrivals;
    private readonly float[] ends;

    private MemberTimes(float[] arrivals, float[] ends)
    {
        this.arrivals = arrivals;
        this.ends = ends;
    }

    public ReadOnlySpan<float> Arrivals => arrivals;

    public ReadOnlySpan<float> Ends => ends;

    public int Count => arrivals.Length;

    /// <param name="notOverBefore">Members whose wind ended before this hour are left out.</param>
    internal static MemberTimes Of(float[] arrivalHours, float[] endHours, double notOverBefore)
    {
        var count = 0;
        for (var m = 0; m < arrivalHours.Length; m++)
        {
            if (Counts(m)) count++;
        }

        var (arrivals, ends) = (new float[count], new float[count]);
        for (var (m, at) = (0, 0); at < count; m++)
        {
            if (!Counts(m)) continue;
            (arrivals[at], ends[at]) = (arrivalHours[m], endHours[m]);
            at++;
        }

        MemberHours.Sort(arrivals);
        MemberHours.Sort(ends);
        return new(arrivals, ends);

        bool Counts(int m) => !float.IsNaN(arrivalHours[m]) && !(endHours[m] < notOverBefore);
    }

    /// <summary>The hour that so large a share of the sorted hours comes before.</summary>
    internal static float Quantile(ReadOnlySpan<float> sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
