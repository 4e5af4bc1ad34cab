namespace StormClock.Core.Units;

/// <summary>The standard normal distribution.</summary>
public static class Normal
{
    /// <summary>
    /// Chance that a standard normal lies below x. Series for the middle, continued fraction for the tails (Abramowitz and Stegun 26.2.10
    /// and 26.2.14, M); good to 1e-12.
    /// </summary>
    public static double Cdf(double x)
    {
        if (double.IsNaN(x)) return double.NaN;
        var density = Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);
        if (Math.Abs(x) < 3.5) return 0.5 + density * Series(x);
        var tail = density == 0 ? 0 : density / Fraction(Math.Abs(x));
        return x < 0 ? tail : 1 - tail;
    }

    /// <summary>x + x³/3 + x⁵/(3·5) + …</summary>
    private static double Series(double x)
    {
        var (sum, term) = (x, x);
        for (var k = 3; Math.Abs(term) > 1e-17 * Math.Abs(sum) && k < 400; k += 2)
        {
            term *= x * x / k;
            sum += term;
        }

        return sum;
    }

    /// <summary>x + 1/(x + 2/(x + 3/(x + …))).</summary>
    private static double Fraction(double x)
    {
        var value = x;
        for (var k = 60; k > 0; k--) value = x + k / value;
        return value;
    }
}
