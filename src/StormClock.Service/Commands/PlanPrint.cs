using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Messages;
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
            output.WriteLine(
                $"  {times.NotBefore(job.Start),-14} start by {times.Deadline(job.StartBy),-14} {job.ChanceDone,5:0 %}  {job.Job.Minutes,3} min  {string.Join(" + ", job.People),-18} {Words.Of(job.Job.Kind, speech)}: {item.Name} ({book.AreaOf(item).Name})");
        }

        foreach (var left in plan.LeftOut)
        {
            output.WriteLine($"  left out: {Words.Of(left.Job.Kind, speech)}: {book.ItemOf(left.Job).Name}: {LeftWords.Of(left.Why, speech)}{(left.Fallback is { } fallback ? $"; instead: {fallback}" : "")}");
        }

        foreach (var left in plan.BetterLeft) output.WriteLine($"  leave: {Words.Of(left.Job.Kind, speech)}: {book.ItemOf(left.Job).Name}: {LeftWords.Of(left.Why, speech)}");

        foreach (var buy in plan.Buy) output.WriteLine($"  buy: {buy.Missing:0.##} {buy.Unit} {buy.Material} (need {buy.Need:0.##}, have {buy.Have:0.##})");
        output.WriteLine();
        output.WriteLine("Official orders come first. Nothing here says that it is safe to stay.");
    }
}
