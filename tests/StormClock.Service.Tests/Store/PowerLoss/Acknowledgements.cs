namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>What the store has shown to those who use it, and when.</summary>
internal sealed class Acknowledgements
{
    private readonly List<(int Op, string State)> states = [];

    /// <param name="op">How many operations had been asked of the disk when this state was acknowledged.</param>
    /// <param name="state">Everything in the store then.</param>
    public void Add(int op, string state) => states.Add((op, state));

    /// <summary>What a power loss after so many operations may show: what was acknowledged last, or the transaction then under way.</summary>
    public IReadOnlyList<string> AllowedAt(int cut)
    {
        var last = states.FindLastIndex(acknowledged => acknowledged.Op <= cut);
        return [.. states.Skip(last).Take(2).Select(acknowledged => acknowledged.State)];
    }
}
