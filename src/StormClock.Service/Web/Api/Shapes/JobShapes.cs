using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api.Shapes;

/// <summary>The work of a garden. A helper gets their own.</summary>
/// <param name="Garden">Its id.</param>
/// <param name="Now">When this was told.</param>
/// <param name="Stage">How far the garden has got with a storm.</param>
/// <param name="Who">Whose work it is, by id; null for everybody's.</param>
/// <param name="WorkIsOver">Nobody works outside any more: then nothing is planned.</param>
/// <param name="Cautions">Sentences to show with the work, in the caller's language.</param>
/// <param name="Planned">In the order of the plan.</param>
/// <param name="LeftOut">Not in the plan, with why and what to do instead.</param>
/// <param name="Answered">Of which somebody said something.</param>
/// <param name="Open">Of the book, neither planned nor answered: all work while nothing is planned.</param>
internal sealed record ApiJobs(
    string Garden,
    Instant Now,
    Stage Stage,
    string? Who,
    bool WorkIsOver,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<ApiJob> Planned,
    IReadOnlyList<ApiJob> LeftOut,
    IReadOnlyList<ApiJob> Answered,
    IReadOnlyList<ApiJob> Open)
{
    /// <param name="who">Whose work it is; null for everybody's.</param>
    public static ApiJobs Of(GardenVisit visit, GardenWork work, string? who)
    {
        var planned = visit.WorkIsOver ? [] : work.Next;
        var open = visit.WorkIsOver ? work.Next.Concat(work.Open) : work.Open;
        return new(
            visit.Book.Id,
            visit.Now,
            visit.Stage.Stage,
            who,
            visit.WorkIsOver,
            ApiTokens.Sentences(visit.WorkIsOver ? CautionsFor.Closed : CautionsFor.Work([.. planned.Select(line => line.Job)], after: false), visit.Speech),
            Shown(visit, planned),
            Shown(visit, work.LeftOut),
            Shown(visit, work.Answered),
            visit.SeesAll ? Shown(visit, open) : []);
    }

    private static IReadOnlyList<ApiJob> Shown(GardenVisit visit, IEnumerable<LinkJob> lines) => [.. lines.Select(line => ApiJob.Of(visit, line)).OfType<ApiJob>()];
}

/// <summary>One job.</summary>
/// <param name="Id">Unique in the garden; what an answer names.</param>
/// <param name="Item">Id of the thing.</param>
/// <param name="Area">Id of its area.</param>
/// <param name="Site">Id of the site of that area.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Title">The same in words, in the caller's language.</param>
/// <param name="WorkClass">Decides the wind it stops at.</param>
/// <param name="People">Ids of those it is planned for; of a helper's work the helper alone. Empty where it is not planned.</param>
/// <param name="Start">Planned; null where it is not.</param>
/// <param name="End">Planned; null where it is not.</param>
/// <param name="StartBy">Latest start that leaves time for it and all that follows, in nine cases of ten; null where it is not planned.</param>
/// <param name="Minutes">For the whole line by the people it needs.</param>
/// <param name="Bring">Material.</param>
/// <param name="Store">Id of the store it goes into; null for none.</param>
/// <param name="TakeCare">What to beware of in this very work, in the caller's language.</param>
/// <param name="Why">Why the plan goes without it, in the caller's language; null where it does not.</param>
/// <param name="Fallback">The cheap thing to do instead, where the plan goes without it and there is still a time for that; null for none.</param>
/// <param name="Progress">What was last said of it.</param>
/// <param name="CannotWhy">Why it cannot be done; null where nothing of the kind was said.</param>
/// <param name="By">Name of who said it; null while open.</param>
/// <param name="At">When it was said; null while open.</param>
internal sealed record ApiJob(
    string Id,
    string Item,
    string Area,
    string Site,
    JobKind Kind,
    string Title,
    WorkClass WorkClass,
    IReadOnlyList<string> People,
    Instant? Start,
    Instant? End,
    Instant? StartBy,
    int Minutes,
    IReadOnlyList<ApiMaterial> Bring,
    string? Store,
    IReadOnlyList<string> TakeCare,
    string? Why,
    string? Fallback,
    JobProgress Progress,
    CannotWhy? CannotWhy,
    string? By,
    Instant? At)
{
    /// <summary>Null when the book has no such job (any more).</summary>
    public static ApiJob? Of(GardenVisit visit, LinkJob line)
    {
        if (visit.Book.Jobs.FirstOrDefault(job => job.Id == line.Job.Token) is not { } job) return null;
        var item = visit.Book.ItemOf(job);
        var area = visit.Book.AreaOf(item);
        var planned = visit.WorkIsOver ? null : visit.Decision?.Plan?.Jobs.FirstOrDefault(planned => planned.Job.Id == job.Id);
        return new(
            job.Id,
            item.Id,
            area.Id,
            area.SiteId,
            job.Kind,
            Words.Title(line.Job, visit.Speech),
            job.Class,
            Crew(visit, planned),
            planned?.Start,
            planned?.End,
            planned?.StartBy,
            job.Minutes,
            [.. job.Materials.Select(need => new ApiMaterial(need.Material, need.Quantity, need.Unit))],
            job.StoreId,
            ApiTokens.TakeCare(line.Job, visit.Speech),
            line.LeftOut is { } why ? LeftWords.Of(why, visit.Speech) : null,
            line.Job.Fallback is { } fallback ? visit.Speech.Catalogue(fallback) : null,
            line.Progress,
            line.Why,
            line.By,
            line.At);
    }

    /// <summary>Who does what is not for helpers.</summary>
    private static IReadOnlyList<string> Crew(GardenVisit visit, PlannedJob? planned) =>
        planned is null ? [] : visit.SeesAll ? planned.People : [.. planned.People.Where(person => person == visit.Person.Id)];
}

/// <summary>Material for a job.</summary>
/// <param name="Material">As the book calls it.</param>
/// <param name="Quantity">How much of it.</param>
/// <param name="Unit">Of the quantity.</param>
internal sealed record ApiMaterial(string Material, double Quantity, string Unit);

/// <summary>An answer to one job.</summary>
/// <param name="Job">Its id; after the wind also the id of a look or an undoing.</param>
/// <param name="Answer">What is said of it. no_time, no_material and needs_person are "cannot" with a reason; take_back takes back what the caller said last.</param>
internal sealed record ApiAnswer(string Job, JobAnswer Answer);

/// <summary>What stands of a job after an answer.</summary>
/// <param name="Job">Its id.</param>
/// <param name="Progress">What was last said of it.</param>
/// <param name="CannotWhy">Why it cannot be done; null where nothing of the kind was said.</param>
/// <param name="By">Name of who said it; null where nobody said anything.</param>
/// <param name="At">When it was said; null where nobody said anything.</param>
internal sealed record ApiSaid(string Job, JobProgress Progress, CannotWhy? CannotWhy, string? By, Instant? At)
{
    /// <param name="state">Null where nothing was ever said.</param>
    public static ApiSaid Of(string job, JobState? state) => new(job, state?.Progress ?? JobProgress.Open, state?.Why, state?.By, state?.At);
}

/// <summary>"I am in", of one person.</summary>
/// <param name="Person">Their id.</param>
internal sealed record ApiIn(string Person);
