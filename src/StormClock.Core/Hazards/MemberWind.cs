namespace StormClock.Core.Hazards;

/// <summary>When one wind is at the place in one member. <see cref="First"/> takes the member in, then ask the rest.</summary>
internal sealed class MemberWind
{
    // Rounding of times near a step must not lose the step.
    private const double StepTolerance = 1e-9;

    private readonly MemberReach[] reaches;
    private readonly double[] meanNmi;

    public MemberWind(ForecastTrack track, double windKt)
    {
        var forecast = ForecastReach.Along(track, windKt);
        reaches = Array.ConvertAll(forecast, reach => new MemberReach(windKt, reach));
        meanNmi = new double[reaches.Length];
    }

    /// <summary>Takes the member's strength and size at every point.</summary>
    public void Settle(MemberPath path)
    {
        for (var k = 0; k < meanNmi.Length; k++) meanNmi[k] = reaches[k].MeanNmi(path.MaxKt[k]) * path.Size[k];
    }

    /// <summary>Takes the member in and asks when the wind first holds.</summary>
    public int? First(MemberPath path)
    {
        Settle(path);
        return FirstStep(path);
    }

    /// <summary>Step (quarters of an hour after the origin) at which the wind first holds; null when it never does.</summary>
    public int? FirstStep(MemberPath path)
    {
        for (var leg = 0; leg < path.Count - 1; leg++)
        {
            var (from, to) = Steps(path, leg);
            for (var step = from; step <= to; step++)
            {
                if (Holds(path, leg, step)) return step;
            }
        }

        return null;
    }

    /// <summary>Step at which the wind last holds; null when it never does.</summary>
    public int? LastStep(MemberPath path)
    {
        for (var leg = path.Count - 2; leg >= 0; leg--)
        {
            var (from, to) = Steps(path, leg);
            for (var step = to; step >= from; step--)
            {
                if (Holds(path, leg, step)) return step;
            }
        }

        return null;
    }

    /// <summary>How far the wind reaches from the centre toward the place, n mi.</summary>
    public double TowardPlace(int leg, double share, double x, double y)
    {
        var (near, far) = ((1 - share) * meanNmi[leg], share * meanNmi[leg + 1]);
        return (near > 0 ? near * reaches[leg].Shape.Toward(-x, -y) : 0)
            + (far > 0 ? far * reaches[leg + 1].Shape.Toward(-x, -y) : 0);
    }

    /// <summary>The only steps of a leg at which the wind can hold: those within its farthest reach. Empty when to is below from.</summary>
    private (int From, int To) Steps(MemberPath path, int leg)
    {
        var farthest = Math.Max(meanNmi[leg] * reaches[leg].LargestShare, meanNmi[leg + 1] * reaches[leg + 1].LargestShare);
        if (path.ClosestSquared(leg) >= farthest * farthest) return (0, -1);

        var (from, to) = path.Within(leg, farthest);
        var (start, hours) = (path.LeadHours[leg], path.LeadHours[leg + 1] - path.LeadHours[leg]);
        return ((int)Math.Ceiling((start + from * hours) / Ensemble.StepHours - StepTolerance),
            (int)Math.Floor((start + to * hours) / Ensemble.StepHours + StepTolerance));
    }

    private bool Holds(MemberPath path, int leg, int step)
    {
        var share = path.ShareAt(leg, step);
        var (x, y) = path.At(leg, share);
        var reach = TowardPlace(leg, share, x, y);
        return x * x + y * y < reach * reach;
    }
}
