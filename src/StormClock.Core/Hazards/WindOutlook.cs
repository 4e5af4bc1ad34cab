using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>What the wind of one cyclone, or of several, does at a place.</summary>
public static class WindOutlook
{
    /// <summary>All members of one advisory at a place, with the error statistics of its basin.</summary>
    /// <param name="thresholdsKt">Sustained marine wind, knots, ascending.</param>
    public static WindMembers At(CycloneAdvisory advisory, GeoPoint place, IReadOnlyList<double> thresholdsKt) =>
        new PlaceWinds(Storm(advisory, thresholdsKt)).At(place);

    /// <summary>All members of one advisory, to be looked at from many places with <see cref="PlaceWinds"/>.</summary>
    public static StormMembers Storm(CycloneAdvisory advisory, IReadOnlyList<double> thresholdsKt) =>
        StormMembers.Of(ForecastTrack.Of(advisory), thresholdsKt, ErrorStatistics.For(advisory.StormId), Draws.Default);

    /// <summary>
    /// Several storms at one place as one: member by member the first arrival, the last end and the strongest wind, in hours after the
    /// earliest origin, as far ahead as all of them are known. Each further storm's members are taken one place on, because the
    /// same draw must not make two storms err alike. All must have the same thresholds, and the same number of members or one.
    /// </summary>
    public static WindMembers Combine(IReadOnlyList<WindMembers> storms)
    {
        if (storms.Count == 1) return storms[0];
        var origin = storms.Min(storm => storm.Origin);
        var count = storms.Max(storm => storm.Count);
        if (storms.Any(storm => storm.Count != count && storm.Count != 1))
            throw new ArgumentException("Storms to combine need the same number of members.", nameof(storms));

        var thresholds = storms[0].ThresholdsKt;
        var arrivals = thresholds.Select(_ => Never(count)).ToArray();
        var ends = thresholds.Select(_ => Never(count)).ToArray();
        for (var s = 0; s < storms.Count; s++)
        {
            var storm = storms[s];
            var later = (float)(storm.Origin - origin).TotalHours;
            for (var m = 0; m < count; m++)
            {
                var member = (m + s) % storm.Count;
                for (var t = 0; t < thresholds.Count; t++)
                {
                    arrivals[t][m] = float.MinNumber(arrivals[t][m], storm.ArrivalHours(thresholds[t])[member] + later);
                    ends[t][m] = float.MaxNumber(ends[t][m], storm.EndHours(thresholds[t])[member] + later);
                }
            }
        }

        var horizon = storms.Min(storm => (storm.Origin - origin).TotalHours + storm.HorizonHours);
        return new(origin, thresholds, arrivals, ends, new Lazy<float[]>(() => Strongest(storms, count)), horizon);
    }

    private static float[] Strongest(IReadOnlyList<WindMembers> storms, int count)
    {
        var peaks = new float[count];
        for (var s = 0; s < storms.Count; s++)
        {
            var ofStorm = storms[s].PeakKt.Span;
            for (var m = 0; m < count; m++) peaks[m] = Math.Max(peaks[m], ofStorm[(m + s) % ofStorm.Length]);
        }

        return peaks;
    }

    private static float[] Never(int count)
    {
        var hours = new float[count];
        Array.Fill(hours, float.NaN);
        return hours;
    }
}
