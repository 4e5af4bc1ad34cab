namespace StormClock.Core.Plan;

/// <summary>Durations as they might turn out: lognormal around that of the book (science.md 8.1, C), from fixed draws.</summary>
internal struct DurationDraws(ulong seed)
{
    private const double Sigma = 0.3;

    private SearchDraws draws = new(seed);

    /// <summary>Slots that work of a length takes this time, at least one.</summary>
    public int Of(int length)
    {
        // Two uniform draws make a normal one (Box and Muller, M).
        var normal = Math.Sqrt(-2 * Math.Log(1 - draws.NextShare())) * Math.Cos(2 * Math.PI * draws.NextShare());
        return Math.Max(1, (int)Math.Round(length * Math.Exp(Sigma * normal)));
    }
}
