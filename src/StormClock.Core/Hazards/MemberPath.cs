using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// One member's way on the flat map around the place: where the centre is at each point of the track, how strong, how large.
/// Refilled for member after member, so that nothing is allocated in the loop.
/// </summary>
internal sealed class MemberPath
{
    private readonly double[] closestSquared;

    public MemberPath(ForecastTrack track, GeoPoint place)
    {
        var count = track.Points.Count;
        LeadHours = track.Points.Select(point => point.LeadHours).ToArray();
        var plane = new LocalPlane(place);
        Forecast = track.Points.Select(point => plane.Place(point.Centre)).ToArray();
        (X, Y, MaxKt, Size) = (new double[count], new double[count], new double[count], new double[count]);
        closestSquared = new double[count - 1];
    }

    public int Count => LeadHours.Length;

    public double[] LeadHours { get; }

    /// <summary>Forecast centre from the place, n mi east and north.</summary>
    public (double XNmi, double YNmi)[] Forecast { get; }

    /// <summary>Member's centre, n mi east of the place.</summary>
    public double[] X { get; }

    /// <summary>Member's centre, n mi north of the place.</summary>
    public double[] Y { get; }

    public double[] MaxKt { get; }

    /// <summary>Factor on the forecast's reach, with the reduction to mean reach.</summary>
    public double[] Size { get; }

    /// <summary>The leg that comes closest, and where on it (0 to 1).</summary>
    public (int Leg, double Share) Closest { get; private set; }

    /// <summary>Square of the closest approach on the leg from point k to k + 1, n mi².</summary>
    public double ClosestSquared(int leg) => closestSquared[leg];

    /// <summary>Finds the closest approach of each leg and of all.</summary>
    public void Measure()
    {
        var least = double.PositiveInfinity;
        for (var k = 0; k < closestSquared.Length; k++)
        {
            var (dx, dy) = (X[k + 1] - X[k], Y[k + 1] - Y[k]);
            var length = dx * dx + dy * dy;
            var share = length > 0 ? Math.Clamp(-(X[k] * dx + Y[k] * dy) / length, 0, 1) : 0;
            var (x, y) = (X[k] + share * dx, Y[k] + share * dy);
            closestSquared[k] = x * x + y * y;
            if (closestSquared[k] >= least) continue;
            least = closestSquared[k];
            Closest = (k, share);
        }
    }

    /// <summary>Share of the leg that has passed at a step.</summary>
    public double ShareAt(int leg, int step) =>
        (step * Ensemble.StepHours - LeadHours[leg]) / (LeadHours[leg + 1] - LeadHours[leg]);

    /// <summary>Centre from the place, n mi.</summary>
    public (double X, double Y) At(int leg, double share) =>
        (X[leg] + share * (X[leg + 1] - X[leg]), Y[leg] + share * (Y[leg + 1] - Y[leg]));

    /// <summary>The stretch of a leg, as shares, in which the centre is nearer than a distance; empty when from is above to.</summary>
    public (double From, double To) Within(int leg, double distanceNmi)
    {
        var (dx, dy) = (X[leg + 1] - X[leg], Y[leg + 1] - Y[leg]);
        var a = dx * dx + dy * dy;
        if (a == 0) return (0, 1);
        var b = X[leg] * dx + Y[leg] * dy;
        var root = Math.Sqrt(Math.Max(0, b * b - a * (X[leg] * X[leg] + Y[leg] * Y[leg] - distanceNmi * distanceNmi)));
        return (Math.Max(0, (-b - root) / a), Math.Min(1, (-b + root) / a));
    }
}
