namespace StormClock.Core.Units;

/// <summary>The sixteen points of the compass, by the letters in use.</summary>
public static class CompassPoint
{
    private static readonly string[] Names = ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

    /// <param name="deg">From north, clockwise.</param>
    public static string Of(double deg) => Names[(int)Math.Round((deg % 360 + 360) % 360 / 22.5) % Names.Length];
}
