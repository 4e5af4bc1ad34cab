namespace StormClock.Core.Plan;

/// <summary>Draws for the search: the same every time (xorshift, 64 bit).</summary>
internal struct SearchDraws(ulong seed)
{
    private ulong state = seed;

    /// <summary>A whole number from 0 to one below <paramref name="count"/>.</summary>
    public int Next(int count)
    {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        return (int)(((state >> 32) * (ulong)count) >> 32);
    }

    /// <summary>From 0 to below 1.</summary>
    public double NextShare() => Next(1 << 30) / (double)(1 << 30);
}
