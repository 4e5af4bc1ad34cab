using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// One member's way on a flat map: where the centre is at each point of the track, how strong, how large. Refilled for member
/// after member, so that nothing is allocated in the loop.
/// </summary>
internal sealed class MemberPath
{
    public MemberPath(ForecastTrack track, GeoPoint origin)
    {
        Count = track.Points.Count;
        var plane = new LocalPlane(origin);
        Forecast = track.Points.Select(point => plane.Place(point.Centre)).ToArray();
        (X, Y, MaxKt, Size) = (new double[Count], new double[Count], new double[Count], new double[Count]);
    }

    public int Count { get; }

    /// <summary>Forecast centre from the origin, n mi east and north.</summary>
    public (double XNmi, double YNmi)[] Forecast { get; }

    /// <summary>Member's centre, n mi east of the origin.</summary>
    public double[] X { get; }

    /// <summary>Member's centre, n mi north of the origin.</summary>
    public double[] Y { get; }

    public double[] MaxKt { get; }

    /// <summary>Factor on the forecast's reach, with the reduction to mean reach.</summary>
    public double[] Size { get; }
}
