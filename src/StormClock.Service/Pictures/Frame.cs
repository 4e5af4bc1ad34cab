namespace StormClock.Service.Pictures;

/// <summary>Lets one day be drawn along the page or down it: "along" runs with time, "across" from lane to lane.</summary>
/// <param name="Upright">Time runs down the page.</param>
/// <param name="Along">Where the day begins.</param>
internal sealed record Frame(bool Upright, double Along)
{
    public Box Box(double along, double across, double length, double breadth, Fill fill, bool edge = false) => Upright
        ? new(across, Along + along, breadth, length, fill, edge)
        : new(Along + along, across, length, breadth, fill, edge);

    /// <summary>A point of a curve that grows to the right or upwards within a strip.</summary>
    public (double X, double Y) Point(double along, double across, double breadth, double share) => Upright
        ? (across + share * breadth, Along + along)
        : (Along + along, across + (1 - share) * breadth);
}
