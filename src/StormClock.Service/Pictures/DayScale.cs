namespace StormClock.Service.Pictures;

/// <summary>Where the hours of a day lie along a line: each of the 24 hours with its own length, so that idle ones can be drawn shorter.</summary>
internal sealed class DayScale
{
    private readonly double[] starts = new double[25];

    public DayScale(IReadOnlyList<double> hourLengths)
    {
        for (var hour = 0; hour < 24; hour++) starts[hour + 1] = starts[hour] + hourLengths[hour];
    }

    public double Length => starts[24];

    /// <param name="hours">Hours of the local day, 0 to 24.</param>
    public double At(double hours)
    {
        var hour = Math.Clamp((int)hours, 0, 23);
        return starts[hour] + (hours - hour) * (starts[hour + 1] - starts[hour]);
    }
}
