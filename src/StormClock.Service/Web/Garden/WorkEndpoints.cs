using System.Globalization;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Desk;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Sheets;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>"Now" and "Jobs" of a garden, and the answers given there.</summary>
internal sealed class WorkEndpoints(GardenDoor door, GardenMemory memory, FeedWatch watch, AnswerDesk answers)
{
    private const int Soonest = 3;

    /// <summary>Before a person's id: that they are in.</summary>
    private const string InMark = "in:";

    public IResult Now(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Now, out var visit, out var refusal)) return refusal;
        var work = Work(visit, visit.SeesAll ? null : visit.Person.Id);
        return GardenDoor.Page<NowView>(
            visit,
            ("Next", work.Next.Take(Soonest).ToList()),
            ("Told", Told(visit, context)),
            ("Indoors", memory.WhoIsIn(visit)),
            ("Sources", SourceHealth.Of(watch, visit.Now).ToList()));
    }

    /// <param name="garden">Its id.</param>
    /// <param name="context">May name a person whose work alone is wanted: <c>?who=ada</c>.</param>
    public IResult Jobs(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, out var visit, out var refusal)) return refusal;
        var who = visit.SeesAll ? visit.Book.People.FirstOrDefault(person => person.Id == context.Request.Query["who"].ToString())?.Id : visit.Person.Id;
        var work = Work(visit, who);
        return GardenDoor.Page<JobsView>(visit, ("Work", work), ("From", From(context, work.Count)), ("Who", who), ("Told", Told(visit, context)));
    }

    /// <summary>Jobs before the page, in whole pages; a number that is none, or beyond the end, begins at the first.</summary>
    private static int From(HttpContext context, int all) =>
        int.TryParse(context.Request.Query["from"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var from) && from < all ? from / JobsView.Most * JobsView.Most : 0;

    /// <summary>Takes an answer to one job, or "I am in" of one person; then the page it came from again.</summary>
    public async Task<IResult> AnswerAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var (press, back) = (form["press"].ToString().Split(' '), form["back"].ToString() is "jobs" ? "jobs" : form["back"].ToString() is "after" ? "after" : "now");
        if (press is not [var word, var token] || LinkEndpoints.Answer(word, AckPurpose.Job) is not { } answer) return Notices.FormUnread(context.Request);
        if (back == "now" && answer == JobAnswer.Done && token.StartsWith(InMark, StringComparison.Ordinal))
        {
            return await answers.InAsync(visit, token[InMark.Length..]) switch
            {
                Taken.Kept => GardenDoor.See(context, "now"),
                Taken.NotTheirs => Notices.NotForYou(context.Request),
                _ => Notices.FormUnread(context.Request),
            };
        }

        return await answers.AnswerAsync(visit, token, answer) == Taken.Kept ? GardenDoor.See(context, $"{back}?told={Uri.EscapeDataString(token)}") : Notices.FormUnread(context.Request);
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

    private GardenWork Work(GardenVisit visit, string? personId) => GardenWork.Of(visit.Book, visit.Decision, memory.States(visit), personId);

    /// <summary>The job that was just answered, by what is recorded of it.</summary>
    private LinkJob? Told(GardenVisit visit, HttpContext context) =>
        context.Request.Query["told"].ToString() is { Length: > 0 } token && BriefLines.Find(visit.Book, token) is { } line
            && memory.States(visit).FirstOrDefault(state => state.JobId == token) is { } state
            ? new LinkJob(line, state.Progress, state.By, state.At, state.Why)
            : null;
}
