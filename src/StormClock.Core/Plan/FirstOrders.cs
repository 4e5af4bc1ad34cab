namespace StormClock.Core.Plan;

/// <summary>Orders that the search starts from.</summary>
internal static class FirstOrders
{
    public static IEnumerable<int[]> Of(PlanModel model)
    {
        yield return Sorted(model, job => -WorthBySlot(model, job), _ => 0);
        yield return Sorted(model, job => model.Stop[job.Lane], job => -WorthBySlot(model, job));
        yield return Sorted(model, job => job.NotBefore, job => job.Area);
        if (model.Told) yield return Sorted(model, job => job.ToldSlot < 0 ? int.MaxValue : job.ToldSlot, job => -WorthBySlot(model, job));
    }

    /// <summary>Worth of one slot of one person.</summary>
    public static double WorthBySlot(PlanModel model, ModelJob job) =>
        job.Value / (job.Length * (job.Teams.Length == 0 ? 1 : model.Teams[job.Teams[0]].Length));

    /// <summary>Sorted by the keys, the frozen head first and every job behind those it waits for; ties as in the book.</summary>
    public static int[] Sorted(PlanModel model, Func<ModelJob, double> first, Func<ModelJob, double> second)
    {
        var wanted = Enumerable.Range(0, model.Jobs.Count).OrderBy(index => first(model.Jobs[index])).ThenBy(index => second(model.Jobs[index]));
        var placed = new HashSet<int>();
        var order = new List<int>();

        void Place(int index)
        {
            if (!placed.Add(index)) return;
            foreach (var before in model.Jobs[index].Before) Place(before);
            order.Add(index);
        }

        foreach (var index in model.Frozen.Concat(wanted)) Place(index);
        return [.. order];
    }
}
