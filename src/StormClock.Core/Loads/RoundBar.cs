namespace StormClock.Core.Loads;

/// <summary>Bending of stems and round posts.</summary>
public static class RoundBar
{
    /// <summary>Moment at which it breaks, N·m: strength × π d³ / 32.</summary>
    public static double BendingStrengthNm(double diameterM, double strengthPa) => strengthPa * Math.PI * Math.Pow(diameterM, 3) / 32;
}
