namespace StormClock.Core.Hazards;

/// <summary>Members' hours in order. They stand on quarters of an hour, so that counting takes the place of sorting.</summary>
internal static class MemberHours
{
    private const int MostSteps = 1024;
    private const float StepsPerHour = (float)(1 / Ensemble.StepHours);

    /// <summary>The hours that are not NaN, ascending.</summary>
    public static float[] InOrder(ReadOnlySpan<float> hours)
    {
        var count = 0;
        foreach (var hour in hours) count += float.IsNaN(hour) ? 0 : 1;

        var known = new float[count];
        for (var (m, at) = (0, 0); at < count; m++)
        {
            known[at] = hours[m];
            at += float.IsNaN(hours[m]) ? 0 : 1;
        }

        Sort(known);
        return known;
    }

    public static void Sort(Span<float> hours)
    {
        Span<int> counts = stackalloc int[MostSteps];
        counts.Clear();
        foreach (var hour in hours)
        {
            var step = (int)(hour * StepsPerHour);
            if ((uint)step >= MostSteps || step != hour * StepsPerHour)
            {
                hours.Sort();
                return;
            }

            counts[step]++;
        }

        for (var (step, at) = (0, 0); at < hours.Length; at += counts[step++])
            hours.Slice(at, counts[step]).Fill((float)(step * Ensemble.StepHours));
    }
}
