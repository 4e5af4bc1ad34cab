using System.Runtime.Intrinsics;
using StormClock.Core.Units;
using Eight = System.Runtime.Intrinsics.Vector256<float>;

namespace StormClock.Core.Hazards;

/// <summary>
/// Eight members on the flat map around a place: where their centres are at each point of the track, and how near each leg between two
/// points comes. Refilled for block after block and place after place, so that nothing is allocated in the loops.
/// </summary>
internal sealed class MemberBlock
{
    // Single precision may put a pass just outside that lies just inside; the exact look at its steps then says no.
    private const float Rounding = 1.00001f;
    private const float StepTolerance = 0.001f;

    // A centre that stands still is abeam all the time.
    private const float LeastSquared = 1e-6f;

    // A storm slower than this has no way of its own.
    private const double SlowKt = 0.5;

    private readonly StormMembers storm;
    private readonly float[] leadHours;
    private readonly float[][] largestShare;
    private readonly float[] forecastX, forecastY, wayEast, wayNorth;
    private readonly Eight[] x, y;
    private readonly Eight[] closestSquared, closestShare, abeamSquared, abeamShare, lengthSquared;

    public MemberBlock(StormMembers storm)
    {
        this.storm = storm;
        var points = storm.Track.Points;
        leadHours = [.. points.Select(point => (float)point.LeadHours)];
        largestShare = Array.ConvertAll(storm.Shapes, shapes => Array.ConvertAll(shapes, Largest));
        (forecastX, forecastY) = (new float[points.Count], new float[points.Count]);
        (wayEast, wayNorth) = (new float[points.Count], new float[points.Count]);
        (x, y) = (new Eight[points.Count], new Eight[points.Count]);
        (closestSquared, closestShare) = (new Eight[Legs], new Eight[Legs]);
        (abeamSquared, abeamShare, lengthSquared) = (new Eight[Legs], new Eight[Legs], new Eight[Legs]);
    }

    public int Legs => leadHours.Length - 1;

    public int Block { get; private set; }

    /// <summary>Draws the forecast on the map around a place.</summary>
    public void See(GeoPoint place)
    {
        var plane = new LocalPlane(place);
        var ways = Ways(storm.Track, plane);
        for (var k = 0; k < leadHours.Length; k++)
        {
            var (east, north) = plane.Place(storm.Track.Points[k].Centre);
            (forecastX[k], forecastY[k]) = ((float)east, (float)north);
            (wayEast[k], wayNorth[k]) = ((float)ways[k].East, (float)ways[k].North);
        }
    }

    /// <summary>Takes eight members in and finds the closest approach of each leg.</summary>
    public void Take(int block)
    {
        Block = block;
        var along = storm.AlongNmi(block);
        var cross = storm.CrossNmi(block);
        for (var k = 0; k < along.Length; k++)
        {
            // Across is to the right of the way.
            x[k] = Vector256.Create(forecastX[k]) + along[k] * wayEast[k] + cross[k] * wayNorth[k];
            y[k] = Vector256.Create(forecastY[k]) + along[k] * wayNorth[k] - cross[k] * wayEast[k];
        }

        for (var leg = 0; leg < Legs; leg++)
        {
            var (dx, dy) = (x[leg + 1] - x[leg], y[leg + 1] - y[leg]);
            var length = Vector256.Max(dx * dx + dy * dy, Vector256.Create(LeastSquared));
            var abeam = (x[leg] * dx + y[leg] * dy) / -length;
            var share = Vector256.Min(Vector256.Max(abeam, Eight.Zero), Eight.One);
            var (nearX, nearY) = (x[leg] + share * dx, y[leg] + share * dy);
            var across = x[leg] * dy - y[leg] * dx;
            (closestShare[leg], closestSquared[leg]) = (share, nearX * nearX + nearY * nearY);
            (lengthSquared[leg], abeamShare[leg], abeamSquared[leg]) = (length, abeam, across * across / length);
        }
    }

    /// <summary>Which of the eight come within the farthest reach of a wind on a leg: bit 0 is the first. The others cannot have it there.</summary>
    public uint Near(int leg, int threshold)
    {
        var farthest = Farthest(leg, threshold);
        return Vector256.LessThan(closestSquared[leg], farthest * farthest).ExtractMostSignificantBits();
    }

    /// <summary>
    /// The only steps of a leg at which a wind can hold: those on which the centre is within the farthest reach, which is a chord's half
    /// to both sides of where the straight line is abeam. Empty where To is below From.
    /// </summary>
    public (Vector256<int> From, Vector256<int> To) StepsNear(int leg, int threshold)
    {
        var farthest = Farthest(leg, threshold);
        var half = Vector256.Sqrt(Vector256.Max(farthest * farthest - abeamSquared[leg], Eight.Zero) / lengthSquared[leg]);
        var from = Vector256.Max(abeamShare[leg] - half, Eight.Zero);
        var to = Vector256.Min(abeamShare[leg] + half, Eight.One);
        return (Vector256.ConvertToInt32(Vector256.Ceiling(Steps(leg, from) - Vector256.Create(StepTolerance))),
            Vector256.ConvertToInt32(Vector256.Floor(Steps(leg, to) + Vector256.Create(StepTolerance))));
    }

    /// <summary>One of the eight on one leg, with the reach of one wind.</summary>
    public MemberLeg Leg(int leg, int lane, int threshold)
    {
        var mean = storm.MeanNmi(threshold, Block);
        var shapes = storm.Shapes[threshold];
        var (x0, y0) = (x[leg][lane], y[leg][lane]);
        return new(
            leadHours[leg],
            leadHours[leg + 1] - leadHours[leg],
            (x0, y0),
            (x[leg + 1][lane] - x0, y[leg + 1][lane] - y0),
            shapes[leg] * mean[leg][lane],
            shapes[leg + 1] * mean[leg + 1][lane]);
    }

    /// <summary>The leg on which a member comes closest, and where on it (0 to 1).</summary>
    public (int Leg, float Share) Closest(int lane)
    {
        var least = 0;
        for (var leg = 1; leg < Legs; leg++)
        {
            if (closestSquared[leg][lane] < closestSquared[least][lane]) least = leg;
        }

        return (least, closestShare[least][lane]);
    }

    public float HoursAt(int leg, float share) => leadHours[leg] + share * (leadHours[leg + 1] - leadHours[leg]);

    /// <summary>The leg that an hour falls on; the first or last leg for an hour before or after all.</summary>
    public int LegAt(float hours)
    {
        var leg = 0;
        while (leg < Legs - 1 && hours > leadHours[leg + 1]) leg++;
        return leg;
    }

    /// <summary>Where on a leg hours fall, held at its ends.</summary>
    public Eight SharesAt(int leg, Eight hours) => Vector256.Min(
        Vector256.Max((hours - Vector256.Create(leadHours[leg])) / (leadHours[leg + 1] - leadHours[leg]), Eight.Zero), Eight.One);

    /// <summary>East and north part of the unit vector along the track, from the point before to the point after; north where the storm hardly moves.</summary>
    private static (double East, double North)[] Ways(ForecastTrack track, LocalPlane plane)
    {
        var ways = new (double, double)[track.Points.Count];
        for (var k = 0; k < ways.Length; k++)
        {
            var (before, after) = (track.Points[Math.Max(k - 1, 0)], track.Points[Math.Min(k + 1, ways.Length - 1)]);
            var (x1, y1) = plane.Place(before.Centre);
            var (x2, y2) = plane.Place(after.Centre);
            var length = Math.Sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1));
            var slow = length < SlowKt * (after.LeadHours - before.LeadHours);
            ways[k] = slow ? (0, 1) : ((x2 - x1) / length, (y2 - y1) / length);
        }

        return ways;
    }

    private Eight Farthest(int leg, int threshold)
    {
        var mean = storm.MeanNmi(threshold, Block);
        var largest = largestShare[threshold];
        return Vector256.Max(mean[leg] * largest[leg], mean[leg + 1] * largest[leg + 1]) * Rounding;
    }

    private Eight Steps(int leg, Eight share) =>
        (Vector256.Create(leadHours[leg]) + share * (leadHours[leg + 1] - leadHours[leg])) * (float)(1 / Ensemble.StepHours);

    private static float Largest(Vector128<float> quarters) => Math.Max(Math.Max(quarters[0], quarters[1]), Math.Max(quarters[2], quarters[3]));
}
