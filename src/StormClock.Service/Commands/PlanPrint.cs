using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Messages;
using StormClock.Service.Messages.Letters;
using StormClock.Service.Wording;

namespace StormClock.Service.Commands;

/// <summary>A plan as a table for a terminal.</summary>
internal static class PlanPrint
{
    public static void Write(TextWriter output, GardenBook book, Decision decision, Instant now)
    {
        var speech = Speech.English(book.Units);
        var times = new Times(book.Zone, now, speech);
        var stage = decision.Standing.Stage;
        output.WriteLine($"{book.Name}, {times.Exact(now)}");
        output.WriteLine(ReasonWords.Sentence(stage.Stage, stage.Reason, speech, times));
        if (decision.Plan is not { } plan)
        {
            output.WriteLine("No garden work is planned.");
            return;
        }

        foreach (var (work, stop) in plan.WorkStops)
        {
            var when = stop.Earliest is { } earliest ? $"as early as {times.Deadline(earliest)}, more likely {times.Deadline(stop.Likely!.Value)}" : "not within the forecast";
            output.WriteLine($"  {work.ToString().ToLowerInvariant(),-7} work stops {when}");
        }

        output.WriteLine();
        foreach (var job in plan.Jobs)
        {
            var item = book.ItemOf(job.Job);
            var by = job.StartBy - job.Start < JobSection.NoTime ? "no time to spare" : $"start by {times.Deadline(job.StartBy)}";
            output.WriteLine(
                $"  {times.NotBefore(job.Start),-14} {by,-23} {job.ChanceDone,5:0 %}  {job.Job.Minutes,3} min  {string.Join(" + ", job.People),-18} {Words.Of(job.Job.Kind, speech)}: {item.Name} ({book.AreaOf(item).Name})");
        }

        foreach (var left in plan.LeftOut)
        {
            output.WriteLine($"  left out: {Words.Of(left.Job.Kind, speech)}: {book.ItemOf(left.Job).Name}: {LeftWords.Of(left.Why, speech)}{(left.Fallback is { } fallback ? $"; instead: {fallback}" : "")}");
        }

        foreach (var left in plan.BetterLeft) output.WriteLine($"  leave: {Words.Of(left.Job.Kind, speech)}: {book.ItemOf(left.Job).Name}: {LeftWords.Of(left.Why, speech)}");

        foreach (var buy in plan.Buy)
        {
            var when = buy.NeededAt is { } needed ? $", in the garden by {times.Deadline(needed)}" : "";
            output.WriteLine($"  buy: {Words.Token(buy.Material, speech)}: {Amount(buy.Missing)} (need {Amount(buy.Need)}, have {Amount(buy.Have)}){when}");

            string Amount(double quantity) => Amounts.Of(quantity, buy.Unit, speech);
        }

        foreach (var store in plan.Stores.Where(store => store.Jobs.Count + store.LeftOut.Count > 0)) Write(output, book, store);
        output.WriteLine();
        output.WriteLine("Official orders come first. Nothing here says that it is safe to stay.");
    }

    private static void Write(TextWriter output, GardenBook book, StoreUse store)
    {
        var free = new[] { store.FreeM2 is { } m2 ? $"{m2:0.#} m² of floor" : null, store.FreeM3 is { } m3 ? $"{m3:0.#} m³" : null }.Where(room => room is not null).ToList();
        output.WriteLine($"  into {book.Stores.First(place => place.Id == store.StoreId).Name}{(free.Count > 0 ? $" ({string.Join(" and ", free)} left)" : "")}: {Names(store.Jobs)}");
        if (store.LeftOut.Count > 0) output.WriteLine($"    stays out: {Names(store.LeftOut)}");

        string Names(IReadOnlyList<string> jobs) => jobs.Count == 0 ? "nothing" : string.Join(", ", jobs.Select(id => book.ItemOf(book.Jobs.First(job => job.Id == id)).Name));
    }
}
