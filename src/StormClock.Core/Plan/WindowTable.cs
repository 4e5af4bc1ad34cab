namespace StormClock.Core.Plan;

/// <summary>When a team may do work of one class at one site, as two tables over the slots, so that a search is two reads.</summary>
internal sealed class WindowTable
{
    /// <summary>Half an hour: work ends so long before it is dark (science.md 7, C).</summary>
    private const int FinishingSlots = 30 / PlanGrid.SlotMinutes;

    private readonly int[] next;
    private readonly int[] until;

    /// <param name="windows">First slot and the slot after the last, in order, not overlapping.</param>
    public WindowTable(int slots, IReadOnlyList<(int From, int Until)> windows)
    {
        Windows = windows;
        next = new int[slots];
        until = new int[slots];
        var slot = 0;
        foreach (var (from, end) in windows)
        {
            for (; slot < from; slot++) next[slot] = from;
            for (; slot < end; slot++) (next[slot], until[slot]) = (slot, end);
        }

        for (; slot < slots; slot++) next[slot] = slots;
    }

    public IReadOnlyList<(int From, int Until)> Windows { get; }

    public int Longest => Windows.Count == 0 ? 0 : Windows.Max(window => window.Until - window.From);

    /// <summary>The first start at or after a slot with so many open slots in one piece; -1 when there is none.</summary>
    public int FirstStart(int slot, int length)
    {
        while (slot < next.Length)
        {
            slot = next[slot];
            if (slot >= next.Length) return -1;
            if (slot + length <= until[slot]) return slot;
            slot = until[slot];
        }

        return -1;
    }

    /// <summary>The last start with so many open slots in one piece that end by a slot; -1 when there is none.</summary>
    public int LastStart(int by, int length)
    {
        for (var i = Windows.Count - 1; i >= 0; i--)
        {
            var start = Math.Min(Windows[i].Until, by) - length;
            if (start >= Windows[i].From) return start;
        }

        return -1;
    }

    /// <summary>
    /// The last start of work that goes on from window to window and is done by a slot; -1 when the windows do not suffice. Where the
    /// slot lies past the stop that cuts the last window, work goes on until then.
    /// </summary>
    public int WalkedBack(int by, int length, int stop)
    {
        for (var i = Windows.Count - 1; i >= 0; i--)
        {
            var open = (Windows[i].Until == stop ? by : Math.Min(Windows[i].Until, by)) - Windows[i].From;
            if (open >= length) return Windows[i].From + open - length;
            length -= Math.Max(0, open);
        }

        return -1;
    }

    /// <summary>
    /// The slot in which work of a length ends that goes on from window to window. A little is finished past the end of a window, in
    /// the light that the evening's margin leaves; past a stop that cuts the last window it goes on
    /// without a break, as it would for those whose storm comes later. Far away when the windows do not suffice.
    /// </summary>
    public int WorkedOff(int start, int length, int stop)
    {
        foreach (var (from, end) in Windows)
        {
            var begin = Math.Max(start, from);
            if (begin >= end) continue;
            if (begin + length <= end + FinishingSlots || end == stop) return begin + length;
            length -= end - begin;
        }

        return int.MaxValue / 2;
    }

    /// <summary>What is open in both.</summary>
    public static IReadOnlyList<(int From, int Until)> Overlap(IReadOnlyList<(int From, int Until)> a, IReadOnlyList<(int From, int Until)> b) =>
        [.. a.SelectMany(x => b.Select(y => (From: Math.Max(x.From, y.From), Until: Math.Min(x.Until, y.Until))))
            .Where(both => both.From < both.Until)
            .OrderBy(both => both.From)];
}
