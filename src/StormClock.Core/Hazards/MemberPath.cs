namespace StormClock.Core.Hazards;

/// <summary>
/// How one member differs from the forecast at each point of the track. Refilled for member after member, so that nothing is
/// allocated in the loop.
/// </summary>
internal sealed class MemberPath(int points)
{
    public int Count => points;

    /// <summary>How far the storm is ahead of its forecast.</summary>
    public double[] AlongNmi { get; } = new double[points];

    /// <summary>How far it is to the right of its forecast.</summary>
    public double[] CrossNmi { get; } = new double[points];

    public double[] MaxKt { get; } = new double[points];

    /// <summary>Factor on the forecast's reach, with the reduction to mean reach.</summary>
    public double[] Size { get; } = new double[points];
}
