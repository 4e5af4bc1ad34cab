using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// A point forecast as members, so that wind that is no cyclone goes the same way as a cyclone's. Each member takes the whole forecast too
/// strong or too weak by one factor, lognormal (science.md 4.1, C). The wind is told as the marine wind that brings it: the sustained wind as
/// forecast, or the gust by the factor that plans use, whichever is more. Only the spell about the strongest hour counts: a breezy
/// afternoon three days before a storm must not end the work for it.
/// </summary>
public static class PointWind
{
    /// <summary>A forecast for a point farther from the garden says nothing of it (C).</summary>
    public const double WithinNmi = 12;

    /// <summary>Farther ahead the spread is so wide that every breeze could be a gale (C).</summary>
    public static readonly Duration Reach = Duration.FromHours(72);

    // Another member's first normal: independent of this member's own track.
    private const int OtherMember = 5003;

    /// <summary>Members of one forecast for each threshold, in hours after its issue.</summary>
    /// <param name="thresholdsKt">Sustained marine wind, knots, ascending.</param>
    public static WindMembers Of(PointForecast forecast, IReadOnlyList<double> thresholdsKt, Draws draws)
    {
        var hours = Hours(forecast);
        var normals = new float[draws.Members];
        for (var m = 0; m < normals.Length; m++) normals[m] = draws.Of((m + OtherMember) % draws.Members)[0];

        var (arrivals, ends) = (new float[thresholdsKt.Count][], new float[thresholdsKt.Count][]);
        for (var t = 0; t < thresholdsKt.Count; t++) (arrivals[t], ends[t]) = Spells(hours, thresholdsKt[t], normals);
        return new(forecast.IssuedAt, thresholdsKt, arrivals, ends, new Lazy<float[]>(() => Peaks(hours, normals)), hours.Count == 0 ? 0 : hours[^1].To);
    }

    /// <summary>When the spell of such wind that blows now, or begins within three hours, ends by the forecast as written; null when there is none.</summary>
    public static Instant? SpellEnd(PointForecast forecast, double thresholdKt, Instant now)
    {
        Instant? end = null;
        foreach (var hour in Hours(forecast).Where(hour => hour.MarineKt >= thresholdKt))
        {
            var (from, to) = (forecast.IssuedAt + Duration.FromHours(hour.From), forecast.IssuedAt + Duration.FromHours(hour.To));
            if (to > now && from <= (end ?? now) + Duration.FromHours(3)) end = to;
        }

        return end;
    }

    /// <summary>How unsure the strength is, as the logarithm's spread (science.md 4.1, C).</summary>
    public static double Sigma(double leadHours) => leadHours <= 24 ? 0.25 : 0.35;

    private static List<ForecastHour> Hours(PointForecast forecast) =>
        [.. forecast.Periods.Where(period => period.From <= forecast.IssuedAt + Reach).Select(period => ForecastHour.Of(period, forecast.IssuedAt)).OfType<ForecastHour>()];

    /// <summary>
    /// A member brings the wind in an hour when its normal is at least what the hour asks for. Going outwards from the strongest hour, the most
    /// that was asked for on the way decides how far its spell reaches.
    /// </summary>
    private static (float[] Arrivals, float[] Ends) Spells(List<ForecastHour> hours, double thresholdKt, float[] normals)
    {
        var (arrivals, ends) = (new float[normals.Length], new float[normals.Length]);
        Array.Fill(arrivals, float.NaN);
        Array.Fill(ends, float.NaN);
        if (hours.Count == 0) return (arrivals, ends);

        var strongest = hours.IndexOf(hours.MaxBy(hour => hour.MarineKt)!);
        var before = Asked(hours.Take(strongest + 1).Reverse(), thresholdKt);
        var after = Asked(hours.Skip(strongest), thresholdKt);
        for (var m = 0; m < normals.Length; m++)
        {
            if (normals[m] < before[0].Normal) continue;
            arrivals[m] = before.FindLast(asked => asked.Normal <= normals[m])!.Hour.From;
            ends[m] = after.FindLast(asked => asked.Normal <= normals[m])!.Hour.To;
        }

        return (arrivals, ends);
    }

    private static List<Demand> Asked(IEnumerable<ForecastHour> outwards, double thresholdKt)
    {
        var asked = new List<Demand>();
        foreach (var hour in outwards)
        {
            var normal = Math.Log(thresholdKt / hour.MarineKt) / hour.Sigma;
            asked.Add(new(asked.Count == 0 ? normal : Math.Max(normal, asked[^1].Normal), hour));
        }

        return asked;
    }

    private static float[] Peaks(List<ForecastHour> hours, float[] normals) =>
        hours.Count == 0 ? new float[normals.Length] : Array.ConvertAll(normals, normal => hours.Max(hour => (float)(hour.MarineKt * Math.Exp(hour.Sigma * normal))));

    private sealed record Demand(double Normal, ForecastHour Hour);

    /// <summary>Hours after issue, on quarters, outwards.</summary>
    private sealed record ForecastHour(float From, float To, double MarineKt, double Sigma)
    {
        public static ForecastHour? Of(ForecastPeriod period, Instant issued)
        {
            var marineMps = Math.Max(period.WindMps ?? 0, WindChain.MarineForGust(period.GustMps ?? 0));
            if (marineMps <= 0 || period.To <= period.From) return null;
            var (from, to) = ((period.From - issued).TotalHours, (period.To - issued).TotalHours);
            return new((float)(Math.Floor(from * 4) / 4), (float)(Math.Ceiling(to * 4) / 4), Wind.MpsToKt(marineMps), PointWind.Sigma(from));
        }
    }
}
