using StormClock.Core.Garden;

namespace StormClock.Core.Reminders;

/// <summary>The cautions that fit a piece of work or an hour; official orders always first.</summary>
public static class CautionsFor
{
    /// <param name="after">Work after the wind: look before lifting (trade.md 7).</param>
    public static IReadOnlyList<Caution> Work(IReadOnlyList<BriefJob> jobs, bool after)
    {
        List<Caution> cautions = [Caution.OfficialOrders];
        if (after)
        {
            cautions.AddRange([Caution.Wires, Caution.Water, Caution.Trees, Caution.Sharp, Caution.Saw, Caution.Generator, Caution.Tetanus, Caution.Heat, Caution.Alone]);
            return cautions;
        }

        if (jobs.Any(job => job.Class == WorkClass.Ladder)) cautions.AddRange([Caution.Ladder, Caution.Wires]);
        if (jobs.Any(job => job.Class == WorkClass.Saw)) cautions.Add(Caution.Saw);
        if (jobs.Any(job => job.Class is WorkClass.Carry or WorkClass.Sheet)) cautions.Add(Caution.Lifting);
        if (jobs.Count > 0) cautions.AddRange([Caution.Lightning, Caution.Heat]);
        return cautions;
    }

    /// <summary>While the garden is closed: the eye's lull is no end.</summary>
    public static IReadOnlyList<Caution> Closed { get; } = [Caution.OfficialOrders, Caution.Lull];
}
