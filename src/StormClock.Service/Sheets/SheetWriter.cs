using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Pictures;
using StormClock.Service.Wording;

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
    private readonly Speech speech;
    private readonly Times times;
    private readonly GardenPlan? plan;

    /// <summary>An order to leave now, or a closed garden, leaves no work to print.</summary>
    private SheetWriter(GardenBook book, Decision decision, Instant now, Speech speech)
    {
        (this.book, this.decision, this.now, this.speech, times) = (book, decision, now, speech, new(book.Zone, now, speech));
        plan = Halt.WorkIsOver(decision.Standing.Stage.Stage, decision.Leave, decision.LeaveBy, now) ? null : decision.Plan;
    }

    public static SheetContent Write(GardenBook book, Decision decision, Instant now, Speech speech) => new SheetWriter(book, decision, now, speech).Content();

    private SheetContent Content() => new(
        speech,
        speech.Say("sheet.title", ("garden", Plain.Line(book.Name))),
        [.. Lead()],
        plan is null ? [] : [.. SheetStops.Of(book, plan, times, speech)],
        [.. Why()],
        plan is null ? null : new(new PictureSubject(book, plan, now, decision.LeaveBy, speech)),
        plan is null ? [] : SheetJobs.Of(book, plan, times, speech),
        [.. Lists().Where(list => list.Lines.Count > 0)],
        speech.Say(
            "sheet.made",
            ("time", times.Exact(now)), ("date", Dates.Date(now.InZone(book.Zone).Date, speech)), ("source", ReasonWords.Source(decision.Standing.Stage.Reason, speech, times))),
        book.Units == UnitSystem.UsCustomary);

    private IEnumerable<string> Lead()
    {
        if (Halt.LeaveNow(decision.Leave, decision.LeaveBy, now)) yield return speech.Say("sheet.leave.now");
        else if (decision.LeaveBy is { } by) yield return speech.Say("sheet.leave.by", ("time", times.Exact(by)));
        yield return CautionWords.Of(Caution.OfficialOrders, speech);
    }

    private IEnumerable<string> Why()
    {
        var stage = decision.Standing.Stage;
        yield return ReasonWords.Sentence(stage.Stage, stage.Reason, speech, times);
        if (plan is null) yield return speech.Say("sheet.no-work");
        else if (plan.Jobs.Count > 0) yield return $"{speech.Say("jobs.last-start")} {speech.Say("sheet.no-promise")}";
    }

    private IEnumerable<SheetList> Lists()
    {
        if (plan is not null)
        {
            yield return new(speech.Say("left-out.heading"), [.. LeftOut(plan.LeftOut)]);
            yield return new(speech.Say("sheet.better-left"), [.. LeftOut(plan.BetterLeft)]);
            yield return new(speech.Say("buy.heading"), [.. plan.Buy.Select(Buy)], Ticks: true);
            yield return new(speech.Say("sheet.stores"), [.. plan.Stores.Where(store => store.UsedM2 > 0 || store.UsedM3 > 0).Select(Store)]);
            yield return new(speech.Say("cautions.heading"), [.. CautionsFor.Work([.. plan.Jobs.Select(job => BriefLines.Line(book, job.Job))], after: false).Where(caution => caution != Caution.OfficialOrders).Distinct().Select(caution => CautionWords.Of(caution, speech))]);
        }

        foreach (var list in SheetAfter.Of(book, speech)) yield return list;
    }

    /// <summary>By reason, since many share one; each with the cheap thing to do instead.</summary>
    private IEnumerable<string> LeftOut(IReadOnlyList<LeftOutJob> jobs) =>
        from job in jobs
        group job by Plain.Line(LeftWords.Of(job.Why, speech)) into same
        select $"{Words.Capital(same.Key)}: {string.Join("; ", same.Select(LeftOut))}";

    private string LeftOut(LeftOutJob left)
    {
        var title = Words.Title(BriefLines.Line(book, left.Job), speech);
        return left.Fallback is { } fallback ? speech.Say("sheet.instead", ("title", title), ("fallback", Plain.Line(speech.Catalogue(fallback)))) : title;
    }

    private string Buy(Shortage buy)
    {
        var by = buy.NeededAt is { } needed ? times.Deadline(needed) : null;
        return speech.Say(
            by is null ? "sheet.buy.no-time" : "sheet.buy",
            ("material", Words.Token(buy.Material, speech)), ("missing", Amount(buy.Missing)), ("need", Amount(buy.Need)), ("have", Amount(buy.Have)), ("time", by ?? ""));

        string Amount(double quantity) => Amounts.Of(quantity, buy.Unit, speech);
    }

    private string Store(StoreUse use)
    {
        var store = book.Stores.First(store => store.Id == use.StoreId);
        string[] parts =
        [
            use.UsedM2 > 0 ? Used("sheet.floor", use.UsedM2, store.FloorM2, Amounts.Floor) : "",
            use.UsedM3 > 0 ? Used("sheet.room", use.UsedM3, store.VolumeM3, Amounts.Room) : "",
        ];
        var full = use.FreeM2 < 0 || use.FreeM3 < 0 ? $". {speech.Say("sheet.overfull")}" : "";
        return $"{Plain.Line(store.Name)}: {string.Join(", ", parts.Where(part => part.Length > 0))}{full}";

        string Used(string key, double used, double? all, Func<double, Speech, string> amount) => all is { } room
            ? speech.Say($"{key}.of", ("used", amount(used, speech)), ("all", amount(room, speech)))
            : speech.Say(key, ("used", amount(used, speech)));
    }
}
