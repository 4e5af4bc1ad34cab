using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>
/// Puts a decision into the words of a sheet. It is read when power and network are gone, so it says everything: the stop
/// times, the work, what is left out, and the list for afterwards.
/// </summary>
internal sealed class SheetWriter
{
    private readonly GardenBook book;
    private readonly Decision decision;
    private readonly Instant now;
    private readonly Times times;
    private readonly GardenPlan? plan;

    /// <summary>An order to leave now, or a closed garden, leaves no work to print.</summary>
    private SheetWriter(GardenBook book, Decision decision, Instant now)
    {
        (this.book, this.decision, this.now, times) = (book, decision, now, new(book.Zone, now));
        plan = Halt.WorkIsOver(decision.Standing.Stage.Stage, decision.Leave, decision.LeaveBy, times) ? null : decision.Plan;
    }

    public static SheetContent Write(GardenBook book, Decision decision, Instant now) => new SheetWriter(book, decision, now).Content();

    private SheetContent Content() => new(
        $"Storm plan for {Plain.Line(book.Name)}",
        [.. Lead()],
        plan is null ? [] : [.. SheetStops.Of(book, plan, times)],
        [.. Why()],
        plan is null ? null : new(new PictureSubject(book, plan, now, decision.LeaveBy)),
        plan is null ? [] : SheetJobs.Of(book, plan, times),
        [.. Lists().Where(list => list.Lines.Count > 0)],
        $"Made {times.Exact(now)} ({now.InZone(book.Zone).Date.ToString("d MMM uuuu", System.Globalization.CultureInfo.InvariantCulture)}) from {ReasonWords.Source(decision.Standing.Stage.Reason, times)}. Newer word outranks this sheet.",
        book.Units == UnitSystem.UsCustomary);

    private IEnumerable<string> Lead()
    {
        if (Halt.LeaveNow(decision.Leave, decision.LeaveBy, times)) yield return "LEAVE NOW. There is no more garden work.";
        else if (decision.LeaveBy is { } by) yield return $"LEAVE BY {times.Exact(by)}. No garden work goes on after that.";
        yield return CautionWords.Of(Caution.OfficialOrders);
    }

    private IEnumerable<string> Why()
    {
        var stage = decision.Standing.Stage;
        yield return ReasonWords.Sentence(stage.Stage, stage.Reason, book.Units, times);
        if (plan is null) yield return "No garden work is planned. Go by the official word.";
        else if (plan.Jobs.Count > 0) yield return "Begun by its last start, each job ends in time in 9 cases of 10. Nothing here says that it is safe to work, to stay or to go back.";
    }

    private IEnumerable<SheetList> Lists()
    {
        if (plan is not null)
        {
            yield return new("Left out", [.. LeftOut(plan.LeftOut)]);
            yield return new("Better left as it is", [.. LeftOut(plan.BetterLeft)]);
            yield return new("To buy", [.. plan.Buy.Select(Buy)], Ticks: true);
            yield return new("Where things go", [.. plan.Stores.Where(store => store.UsedM2 > 0 || store.UsedM3 > 0).Select(Store)]);
            yield return new("Take care", [.. CautionsFor.Work([.. plan.Jobs.Select(job => BriefLines.Line(book, job.Job))], after: false).Where(caution => caution != Caution.OfficialOrders).Distinct().Select(CautionWords.Of)]);
        }

        foreach (var list in SheetAfter.Of(book)) yield return list;
    }

    /// <summary>By reason, since many share one; each with the cheap thing to do instead.</summary>
    private IEnumerable<string> LeftOut(IReadOnlyList<LeftOutJob> jobs) =>
        from job in jobs
        group job by Plain.Line(job.Why) into same
        select $"{Words.Capital(same.Key)}: {string.Join("; ", same.Select(LeftOut))}";

    private string LeftOut(LeftOutJob left)
    {
        var title = Words.Title(BriefLines.Line(book, left.Job));
        return left.Fallback is { } fallback ? $"{title} (instead: {Plain.Line(fallback)})" : title;
    }

    private string Buy(Shortage buy) =>
        $"{Words.Token(buy.Material)}: {Amounts.Of(buy.Missing, buy.Unit, book.Units)} (need {Amounts.Of(buy.Need, buy.Unit, book.Units)}, have {Amounts.Of(buy.Have, buy.Unit, book.Units)})";

    private string Store(StoreUse use)
    {
        var store = book.Stores.First(store => store.Id == use.StoreId);
        string[] parts =
        [
            use.UsedM2 > 0 ? $"floor {Amounts.Floor(use.UsedM2, book.Units)}{Of(store.FloorM2, Amounts.Floor)}" : "",
            use.UsedM3 > 0 ? $"room {Amounts.Room(use.UsedM3, book.Units)}{Of(store.VolumeM3, Amounts.Room)}" : "",
        ];
        var full = use.FreeM2 < 0 || use.FreeM3 < 0 ? ". More than it holds" : "";
        return $"{Plain.Line(store.Name)}: {string.Join(", ", parts.Where(part => part.Length > 0))}{full}";

        string Of(double? free, Func<double, UnitSystem, string> amount) => free is { } all ? $" of {amount(all, book.Units)}" : "";
    }
}
