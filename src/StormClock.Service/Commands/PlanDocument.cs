using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Commands;

/// <summary>The plan for a garden, as the command "plan --json" prints it. Members may be added, none is ever renamed.</summary>
/// <param name="Garden">Its id.</param>
/// <param name="Now">When it was planned.</param>
/// <param name="Stage">How far the garden has got with a storm.</param>
/// <param name="Reason">Why that stage holds.</param>
/// <param name="WorkStops">Earliest reasonable stop by class of work; null where it (almost) never comes, or while nothing is planned.</param>
/// <param name="Jobs">In the order of the plan.</param>
/// <param name="LeftOut">Not in the plan.</param>
/// <param name="Buy">Material that is short.</param>
/// <param name="Stores">What goes where.</param>
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
        var speech = Speech.English(book.Units);
        return new(
            book.Id,
            now,
            stage.Stage,
            new(stage.Reason.Cause, stage.Reason.Source, stage.Reason.Issued, stage.Reason.Chance, stage.Reason.At),
            Enum.GetValues<WorkClass>().ToDictionary(work => work.ToString().ToLowerInvariant(), work => plan?.WorkStops[work].Earliest),
            [.. (plan?.Jobs ?? []).Select(job => JobPart.Of(book, job))],
            [.. (plan?.LeftOut ?? []).Concat(plan?.BetterLeft ?? []).Select(left => new LeftOutPart(left.Job.Id, LeftWords.Of(left.Why, speech), left.Fallback))],
            [.. (plan?.Buy ?? []).Select(buy => new BuyPart(buy.Material, buy.Need, buy.Have, buy.Missing, buy.Unit, buy.NeededAt))],
            [.. (plan?.Stores ?? []).Select(store => new StorePart(store.StoreId, store.UsedM2, store.FreeM2, store.UsedM3, store.FreeM3, store.Jobs, store.LeftOut))]);
    }

    /// <summary>Why a stage holds.</summary>
    /// <param name="Cause">Which number or word made it hold.</param>
    /// <param name="Source">As a person would name it; empty where there is none.</param>
    /// <param name="Issued">When the source spoke; null where there is none.</param>
    /// <param name="Chance">0 to 1, where the cause is a chance.</param>
    /// <param name="At">The time that counts: earliest reasonable arrival, onset or leave-by.</param>
    internal sealed record ReasonPart(StageCause Cause, string Source, Instant? Issued, double? Chance, Instant? At);

    /// <summary>A planned job.</summary>
    /// <param name="Id">Unique in the garden.</param>
    /// <param name="Item">Id of the thing.</param>
    /// <param name="Area">Id of its area.</param>
    /// <param name="Site">Id of the site of that area.</param>
    /// <param name="Kind">What is done.</param>
    /// <param name="WorkClass">Decides the wind it stops at.</param>
    /// <param name="People">Ids of those it is planned for.</param>
    /// <param name="Start">When it is planned.</param>
    /// <param name="End">When it is planned to be done.</param>
    /// <param name="StartBy">Latest start that leaves time for it and all that follows, in nine cases of ten.</param>
    /// <param name="ChanceDone">0 to 1, given that the wind comes.</param>
    /// <param name="Value">Worth of having it done, in the garden's money.</param>
    /// <param name="HazardToOthers">Extra worth because it can hit people or reach water.</param>
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

    /// <summary>A job that is not in the plan.</summary>
    /// <param name="Id">Of the job.</param>
    /// <param name="Why">In English.</param>
    /// <param name="Fallback">The cheap thing to do instead; null for none.</param>
    internal sealed record LeftOutPart(string Id, string Why, string? Fallback);

    /// <summary>Material that is short.</summary>
    /// <param name="Material">As the book calls it.</param>
    /// <param name="Need">For all the work.</param>
    /// <param name="Have">There is.</param>
    /// <param name="Short">Is missing.</param>
    /// <param name="Unit">Of all three.</param>
    /// <param name="NeededAt">When the first job that lacks it begins; null where none is planned.</param>
    internal sealed record BuyPart(string Material, double Need, double Have, double Short, string Unit, Instant? NeededAt);

    /// <summary>Use of a store.</summary>
    /// <param name="Id">Of the store.</param>
    /// <param name="UsedM2">Floor that is taken, m².</param>
    /// <param name="FreeM2">Floor that is left, m²; null when not known.</param>
    /// <param name="UsedM3">Volume that is taken, m³.</param>
    /// <param name="FreeM3">Volume that is left, m³; null when not known.</param>
    /// <param name="Jobs">Ids of the jobs that bring something into it.</param>
    /// <param name="LeftOut">Ids of those for which there is no room.</param>
    internal sealed record StorePart(string Id, double UsedM2, double? FreeM2, double UsedM3, double? FreeM3, IReadOnlyList<string> Jobs, IReadOnlyList<string> LeftOut);
}
