namespace StormClock.Core.Plan;

/// <summary>Small changes of an order that keep the frozen head and every job behind those it waits for.</summary>
internal sealed class OrderMoves(PlanModel model, ulong seed)
{
    private const int LongestBlock = 4;

    private readonly int head = model.Frozen.Length;
    private readonly int count = model.Jobs.Count;
    private readonly bool teamsDiffer = model.Jobs.Any(job => job.Teams.Length > 1);
    private SearchDraws draws = new(seed);

    /// <summary>Changes the line's choices; the first place that changed, or -1 when the change drawn is not allowed.</summary>
    public int Change(Line line)
    {
        var free = count - head;
        if (free == 0) return -1;
        var kind = draws.Next(100);
        var reach = Math.Clamp(Planned(line) + 1 - head, 1, free);
        if (teamsDiffer && kind < 15) return OtherTeam(line, head + draws.Next(reach));

        var (from, to) = (head + draws.Next(free), head + draws.Next(reach));
        if (kind < 40) return Swap(line, Math.Min(from, to), Math.Max(from, to));
        var block = kind < 80 ? 1 : 2 + draws.Next(LongestBlock - 1);
        return MoveBlock(line, from, block, to);
    }

    /// <summary>The place behind the last job that is planned: behind it, order means nothing.</summary>
    private static int Planned(Line line)
    {
        var place = line.Order.Length;
        while (place > 0 && line.Start[line.Order[place - 1]] < 0) place--;
        return place;
    }

    private int OtherTeam(Line line, int place)
    {
        var index = line.Order[place];
        var teams = model.Jobs[index].Teams;
        if (teams.Length < 2) return -1;
        var pick = draws.Next(teams.Length + 1);
        var wish = pick == teams.Length ? -1 : teams[pick];
        if (wish == line.Wish[index]) return -1;
        line.Wish[index] = wish;
        return place;
    }

    private int Swap(Line line, int low, int high)
    {
        if (low == high) return -1;
        var order = line.Order;
        var (early, late) = (model.Jobs[order[low]], model.Jobs[order[high]]);
        for (var place = low; place < high; place++)
        {
            if (late.Before.Contains(order[place]) || early.After.Contains(order[place + 1])) return -1;
        }

        (order[low], order[high]) = (order[high], order[low]);
        return low;
    }

    /// <summary>Takes a few neighbours out and puts them in again elsewhere.</summary>
    private int MoveBlock(Line line, int from, int block, int to)
    {
        if (from + block > count || to + block > count || from == to) return -1;
        var order = line.Order;
        var passed = from < to ? order.AsSpan(from + block, to - from) : order.AsSpan(to, from - to);
        foreach (var moved in order.AsSpan(from, block))
        {
            var barred = from < to ? model.Jobs[moved].After : model.Jobs[moved].Before;
            if (barred.Length > 0 && passed.ContainsAny(barred)) return -1;
        }

        Span<int> taken = stackalloc int[LongestBlock];
        order.AsSpan(from, block).CopyTo(taken);
        if (from < to) passed.CopyTo(order.AsSpan(from));
        else passed.CopyTo(order.AsSpan(to + block));
        taken[..block].CopyTo(order.AsSpan(to));
        return Math.Min(from, to);
    }

    /// <summary>From 0 to below 1.</summary>
    public double Share() => draws.NextShare();
}
