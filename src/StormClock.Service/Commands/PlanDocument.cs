using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Stages;

namespace StormClock.Service.Commands;

/// <summary>The JSON of <c>plan</c> (product.md 4): keys may be added, never renamed.</summary>
internal sealed record PlanDocument(
    string Garden,
    Instant Now,
    Stage Stage,
    PlanDocument.ReasonPart Reason,
    IReadOnlyDictionary<string, Instant?> WorkStops,
    IReadOnlyList<PlanDocument.JobPart> Jobs,
    IReadOnlyList<PlanDocument.LeftOutPart> LeftOut,
    IReadOnlyList<PlanDocument.BuyPart> Buy,
    IReadOnlyList<PlanDocument.StorePart> Stores)
{
    public static PlanDocument Of(GardenBook book, Decision decision, Instant now)
    {
        var stage = decision.Standing.Stage;
        var plan = decision.Plan;
        return new(
            book.Id,
            now,
            stage.Stage,
            new(stage.Reason.Cause, stage.Reason.Source, stage.Reason.Issued, stage.Reason.Chance, stage.Reason.At),
            Enum.GetValues<WorkClass>().ToDictionary(work => work.ToString().ToLowerInvariant(), work => plan?.WorkStops[work].Earliest),
            [.. (plan?.Jobs ?? []).Select(job => JobPart.Of(book, job))],
            [.. (plan?.LeftOut ?? []).Concat(plan?.BetterLeft ?? []).Select(left => new LeftOutPart(left.Job.Id, left.Why, left.Fallback))],
            [.. (plan?.Buy ?? []).Select(buy => new BuyPart(buy.Material, buy.Need, buy.Have, buy.Missing, buy.Unit, buy.NeededAt))],
            [.. (plan?.Stores ?? []).Select(store => new StorePart(store.StoreId, store.UsedM2, store.FreeM2, store.UsedM3, store.FreeM3, store.Jobs, store.LeftOut))]);
    }

    internal sealed record ReasonPart(StageCause Cause, string Source, Instant? Issued, double? Chance, Instant? At);

    internal sealed record JobPart(
        string Id, string Item, string Area, string Site, JobKind Kind, WorkClass WorkClass, IReadOnlyList<string> People,
        Instant Start, Instant End, Instant StartBy, double ChanceDone, double Value, double HazardToOthers)
    {
        public static JobPart Of(GardenBook book, Core.Plan.PlannedJob planned)
        {
            var job = planned.Job;
            var item = book.ItemOf(job);
            var area = book.AreaOf(item);
            return new(
                job.Id, item.Id, area.Id, area.SiteId, job.Kind, job.Class, planned.People, planned.Start, planned.End, planned.StartBy,
                Math.Round(planned.ChanceDone, 4), job.Value, job.HazardToOthers);
        }
    }

    internal sealed record LeftOutPart(string Id, string Why, string? Fallback);

    internal sealed record BuyPart(string Material, double Need, double Have, double Short, string Unit, Instant? NeededAt);

    internal sealed record StorePart(string Id, double UsedM2, double? FreeM2, double UsedM3, double? FreeM3, IReadOnlyList<string> Jobs, IReadOnlyList<string> LeftOut);
}
