using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Desk;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Sheets;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>"Now" and "Jobs" of a garden, and the answers given there.</summary>
internal sealed class WorkEndpoints(GardenDoor door, StormStore store, FeedWatch watch, IJobBook answers)
{
    private const int Soonest = 3;

    public IResult Now(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Now, out var visit, out var refusal)) return refusal;
        var work = Work(visit, visit.SeesAll ? null : visit.Person.Id);
        return GardenDoor.Page<NowView>(
            visit,
            ("Next", work.Next.Take(Soonest).ToList()),
            ("Told", Told(visit, context)),
            ("Indoors", Indoor(visit)),
            ("Sources", SourceHealth.Of(watch, visit.Now).ToList()));
    }

    /// <param name="garden">Its id.</param>
    /// <param name="context">May name a person whose work alone is wanted: <c>?who=ada</c>.</param>
    public IResult Jobs(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, out var visit, out var refusal)) return refusal;
        var who = visit.SeesAll ? visit.Book.People.FirstOrDefault(person => person.Id == context.Request.Query["who"].ToString())?.Id : visit.Person.Id;
        return GardenDoor.Page<JobsView>(visit, ("Work", Work(visit, who)), ("Who", who), ("Told", Told(visit, context)));
    }

    /// <summary>Takes an answer to one job, or "I am in" of one person; then the page it came from again.</summary>
    public async Task<IResult> AnswerAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var (press, back) = (form["press"].ToString().Split(' '), form["back"].ToString() is "jobs" ? "jobs" : form["back"].ToString() is "after" ? "after" : "now");
        if (press is not [var word, var token] || LinkEndpoints.Answer(word, AckPurpose.Job) is not { } answer || visit.Stage.EpisodeId is not { } episode) return Notices.FormUnread(context.Request);

        var life = visit.Now + LinkMaker.Life;
        if (back == "now" && answer == JobAnswer.Done && visit.Book.People.FirstOrDefault(person => token == $"in:{person.Id}") is { } person)
        {
            if (!visit.SeesAll && person.Id != visit.Person.Id) return Notices.NotForYou(context.Request);
            await answers.AnswerAsync(new(AckPurpose.Indoors, visit.Book.Id, episode, person.Id, "", life), answer, visit.Now);
            return GardenDoor.See(context, "now");
        }

        if (BriefLines.Find(visit.Book, token) is null || !IsTheirs(visit, token)) return Notices.FormUnread(context.Request);
        await answers.AnswerAsync(new(AckPurpose.Job, visit.Book.Id, episode, visit.Person.Id, token, life), answer, visit.Now);
        return GardenDoor.See(context, $"{back}?told={Uri.EscapeDataString(token)}");
    }

    /// <summary>The whole plan on paper; not for helpers, whose letters carry their own work.</summary>
    public IResult Sheet(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, out var visit, out var refusal)) return refusal;
        if (!visit.SeesAll) return Notices.NotForYou(context.Request);
        return visit.Decision is { Plan: not null } decision && !visit.WorkIsOver
            ? TypedResults.File(PlanSheet.Of(visit.Book, decision, visit.Now, visit.Speech), "application/pdf", $"{visit.Book.Id}-plan.pdf")
            : Notices.NoPlan(context.Request);
    }

    /// <summary>A helper answers for work that is planned for them, was told them, or that they answered before; after the wind for everything.</summary>
    private bool IsTheirs(GardenVisit visit, string token)
    {
        if (visit.SeesAll || token.Contains(':', StringComparison.Ordinal)) return true;
        return (visit.Decision?.Plan?.Jobs.Any(job => job.Job.Id == token && job.People.Contains(visit.Person.Id)) ?? false)
            || (visit.Decision?.Standing.Announced.Jobs.Any(job => job.JobId == token && job.People.Contains(visit.Person.Id)) ?? false)
            || States(visit).Any(state => state.JobId == token && state.By == visit.Person.Name);
    }

    private GardenWork Work(GardenVisit visit, string? personId) => GardenWork.Of(visit.Book, visit.Decision, States(visit), personId);

    private IReadOnlyList<JobState> States(GardenVisit visit) =>
        visit.Stage.EpisodeId is { } episode ? store.Read(reader => JobStates.OfEpisode(reader, visit.Book.Id, episode)) : [];

    /// <summary>The job that was just answered, by what is recorded of it.</summary>
    private LinkJob? Told(GardenVisit visit, HttpContext context) =>
        context.Request.Query["told"].ToString() is { Length: > 0 } token && BriefLines.Find(visit.Book, token) is { } line
            && States(visit).FirstOrDefault(state => state.JobId == token) is { } state
            ? new LinkJob(line, state.Progress, state.By, state.At, state.Why)
            : null;

    private IReadOnlyList<(Person Person, Instant? Since)> Indoor(GardenVisit visit)
    {
        if (visit.Stage is not { Stage: Core.Stages.Stage.GardenClosed, EpisodeId: { } episode } closed) return [];
        var said = store.Read(reader => Indoors.OfEpisode(reader, visit.Book.Id, episode));
        return [.. visit.Book.People.Where(person => person.Role != PersonRole.Keeper).Select(person => (person, said.TryGetValue(person.Id, out var at) && at >= closed.Since ? at : (Instant?)null))];
    }
}
