namespace StormClock.Core.Loads;

/// <summary>How a thing gives way to wind.</summary>
public enum FailureMode
{
    Slides,
    Tips,
    Lifts,

    /// <summary>Hangs more than 30° out of plumb.</summary>
    Swings,

    /// <summary>Posts give in the ground.</summary>
    Leans,
    Breaks,
    Uproots,

    /// <summary>Soft stems lie down.</summary>
    Lodges,

    /// <summary>Cloth, film or net goes.</summary>
    Tears,
}

/// <summary>The ground a thing stands on or in. A storm's rain soaks it: plans look at <see cref="Saturated"/>.</summary>
public enum Soil { Dry, Saturated }

/// <summary>One way of failing.</summary>
/// <param name="GustMps">3-s gust at the thing at which one in two fails.</param>
/// <param name="Beta">Spread of the natural logarithm of that gust between things alike.</param>
public sealed record Failure(FailureMode Mode, double GustMps, double Beta);

/// <summary>What the wind can do to a thing: an order of worry, never a promise that it stands.</summary>
/// <param name="Modes">At least one, ascending by gust.</param>
/// <param name="CentreHeightM">Where the wind takes hold, above the ground, for the gust at that height.</param>
public sealed record ItemStrength(IReadOnlyList<Failure> Modes, double CentreHeightM)
{
    /// <summary>The way that comes first in a rising wind.</summary>
    public Failure First => Modes[0];
}
