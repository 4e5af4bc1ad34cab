namespace StormClock.Core.Loads;

/// <summary>What holds a thing down besides its weight.</summary>
/// <param name="TensionN">Working load of the lines that pull when the wind blows, all together.</param>
/// <param name="LeverM">From the lee edge of the foot to where they pull down.</param>
/// <param name="AngleDeg">Of the lines to the ground.</param>
public readonly record struct Tie(double TensionN, double LeverM, double AngleDeg = Tie.UsualAngleDeg)
{
    /// <summary>The usual test of a strap (trade.md 2.7, C).</summary>
    public const double UsualAngleDeg = 45;

    /// <summary>Part along the ground, N.</summary>
    public double AlongN => TensionN * Math.Cos(AngleDeg * (Math.PI / 180));

    /// <summary>Part straight down, N.</summary>
    public double DownN => TensionN * Math.Sin(AngleDeg * (Math.PI / 180));
}
