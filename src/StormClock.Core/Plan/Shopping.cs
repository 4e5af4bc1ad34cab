using StormClock.Core.Garden;

namespace StormClock.Core.Plan;

/// <summary>When each job can have what it needs: at once what is on hand, the rest once it is bought.</summary>
internal static class Shopping
{
    /// <summary>
    /// The first hour of each job that must wait for the shop, by job id. What is on hand goes to the jobs worth most by the minute. A job
    /// that people have been told of does not wait longer than they were told: the shopping began then.
    /// </summary>
    public static IReadOnlyDictionary<string, Instant> Waits(PlanRequest request, IReadOnlyList<Job> jobs)
    {
        var hand = request.Book.Supplies.GroupBy(supply => (supply.Material, supply.Unit)).ToDictionary(same => same.Key, same => same.Sum(supply => supply.Quantity));
        var told = (request.Before?.Jobs ?? []).ToLookup(job => job.JobId, job => job.Start);
        var bought = request.Now + Duration.FromHours(request.Book.ShoppingHours);
        var waits = new Dictionary<string, Instant>();
        foreach (var job in jobs.OrderByDescending(LeftOut.WorthByMinute).ThenBy(job => job.Id, StringComparer.Ordinal))
        {
            if (!request.Is(job, JobProgress.Started) && !Takes(hand, job)) waits[job.Id] = told[job.Id].Append(bought).Min();
        }

        return waits;
    }

    /// <summary>Takes from what is on hand all that the job needs, or nothing.</summary>
    private static bool Takes(Dictionary<(string Material, string Unit), double> hand, Job job)
    {
        var needs = job.Materials.GroupBy(need => (need.Material, need.Unit)).Select(same => (same.Key, Quantity: same.Sum(need => need.Quantity))).ToList();
        if (needs.Any(need => hand.GetValueOrDefault(need.Key) < need.Quantity)) return false;
        foreach (var (key, quantity) in needs) hand[key] = hand.GetValueOrDefault(key) - quantity;
        return true;
    }
}
