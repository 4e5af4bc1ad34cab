namespace StormClock.Service.Pictures;

/// <summary>Puts words side by side in the lowest row in which they touch no other.</summary>
internal sealed class Rows
{
    private readonly List<double> ends = [];

    public int Count => ends.Count;

    /// <summary>The row, from 0; words come in the order in which they begin.</summary>
    public int Place(double from, double to)
    {
        var row = ends.FindIndex(end => end <= from);
        if (row < 0)
        {
            row = ends.Count;
            ends.Add(to);
        }

        ends[row] = to;
        return row;
    }
}
