namespace StormClock.Core.Units;

/// <summary>How hot it feels in the shade: the regression of the US weather service (Rothfusz 1990, M) with its two corrections.</summary>
public static class HeatIndex
{
    /// <summary>From here on the chart says danger (103 °F; M): rest a quarter of each hour.</summary>
    public const double DangerC = (103 - 32) / 1.8;

    // The regression holds from here on, °F; below it the simple form does.
    private const double LeastF = 80;

    /// <summary>Heat index, °C.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity, 0 to 1.</param>
    public static double OfC(double airC, double humidity)
    {
        var (t, r) = ((airC * 1.8) + 32, humidity * 100);
        var simple = ((0.5 * (t + 61 + ((t - 68) * 1.2) + (r * 0.094))) + t) / 2;
        return ((simple < LeastF ? simple : Regression(t, r) + Corrected(t, r)) - 32) / 1.8;
    }

    private static double Regression(double t, double r) =>
        -42.379 + (2.04901523 * t) + (10.14333127 * r) - (0.22475541 * t * r) - (0.00683783 * t * t) - (0.05481717 * r * r)
        + (0.00122874 * t * t * r) + (0.00085282 * t * r * r) - (0.00000199 * t * t * r * r);

    private static double Corrected(double t, double r)
    {
        if (r < 13 && t is >= 80 and <= 112) return -(13 - r) / 4 * Math.Sqrt((17 - Math.Abs(t - 95)) / 17);
        return r > 85 && t is >= 80 and <= 87 ? (r - 85) / 10 * (87 - t) / 5 : 0;
    }
}
