using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Stages;
using StormClock.Service.Visits;
using StormClock.Service.Web.Api.Shapes;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api;

/// <summary>The work before and after a storm, and what is said of it.</summary>
internal sealed class WorkApi(ApiDoor door, GardenMemory memory, AnswerDesk answers)
{
    private const string AnswerWanted = "an object with job (an id from jobs or after) and answer (done, later, cannot, no_time, no_material, needs_person or take_back)";
    private const string InWanted = "an object with person (an id from indoors)";
    private const string OutcomeWanted = "an object with item (an id from look), outcome (held, moved, leaning, damaged, lost, not_done or made_worse) and, if need be, note (at most 500 characters)";

    /// <summary>The work of a garden: planned in its order, left out with why, and what was said of it.</summary>
    /// <param name="garden">Id of the garden.</param>
    /// <param name="who">Id of the person whose work alone is wanted; left out for everybody's. Helpers get their own.</param>
    public Results<Told<ApiJobs>, ProblemHttpResult> Jobs(string garden, HttpContext context, string? who = null)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, decided: true, out var visit, out var refusal)) return refusal;
        if (who is not null && (visit.SeesAll ? visit.Book.People.All(person => person.Id != who) : who != visit.Person.Id)) return NotInBook("who", "an id from the book's people; a helper gets their own work only");
        var whose = visit.SeesAll ? who : visit.Person.Id;
        return Told.Of(ApiJobs.Of(visit, GardenWork.Of(visit.Book, visit.Decision, memory.States(visit), whose), whose));
    }

    /// <summary>Takes an answer to one job. The same answer twice is taken once.</summary>
    /// <param name="garden">Id of the garden.</param>
    public async Task<Results<Told<ApiSaid>, ProblemHttpResult>> AnswerAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, decided: true, out var visit, out var refusal)) return refusal;
        var (body, unread) = await ApiBody.ReadAsync<ApiAnswer>(context, AnswerWanted);
        if (body is null) return unread!;
        return await answers.AnswerAsync(visit, body.Job, body.Answer) switch
        {
            Taken.Kept => Told.Of(ApiSaid.Of(body.Job, memory.States(visit).FirstOrDefault(state => state.JobId == body.Job))),
            Taken.NotNow => NothingFollowed,
            _ => NotInBook("job", "an id from jobs or after; a helper answers for their own work"),
        };
    }

    /// <summary>Takes "I am in" of one person, while the garden is closed.</summary>
    /// <param name="garden">Id of the garden.</param>
    public async Task<Results<Told<ApiIndoors>, ProblemHttpResult>> InAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Now, decided: true, out var visit, out var refusal)) return refusal;
        var (body, unread) = await ApiBody.ReadAsync<ApiIn>(context, InWanted);
        if (body is null) return unread!;

        // What is said before the garden closes counts for nothing then, so it is not taken as if it did.
        if (visit.Stage.Stage != Stage.GardenClosed) return Refused("Nobody is asked whether they are in while the garden is not closed. Say it once the stage is garden_closed.");
        return await answers.InAsync(visit, body.Person) == Taken.Kept
            ? Told.Of(new ApiIndoors(
                body.Person, visit.Book.People.First(person => person.Id == body.Person).Name, memory.WhoIsIn(visit).FirstOrDefault(known => known.Person.Id == body.Person).Since ?? visit.Now))
            : NotInBook("person", "an id from indoors; a helper speaks for themselves");
    }

    /// <summary>What there is to do when it is over: look, undo, and what was found.</summary>
    /// <param name="garden">Id of the garden.</param>
    public Results<Told<ApiAfter>, ProblemHttpResult> After(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, decided: true, out var visit, out var refusal)) return refusal;
        return Told.Of(ApiAfter.Of(visit, memory.After(visit)));
    }

    /// <summary>Takes what became of one thing, in the recheck. Said again, the last word stands.</summary>
    /// <param name="garden">Id of the garden.</param>
    public async Task<Results<Told<ApiFound>, ProblemHttpResult>> OutcomeAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, decided: true, out var visit, out var refusal)) return refusal;
        var (body, unread) = await ApiBody.ReadAsync<ApiOutcome>(context, OutcomeWanted);
        if (body is null) return unread!;
        if (body.Note is { Length: > AnswerDesk.LongestNote }) return ApiProblem.Unread(null, OutcomeWanted);
        return await answers.FoundAsync(visit, body.Item, body.Outcome, body.Note?.Trim() ?? "") switch
        {
            Taken.Kept => Told.Of(ApiFound.Of(memory.Found(visit).First(found => found.ItemId == body.Item))),
            Taken.NotNow => Refused("Outcomes are taken in the recheck alone. Say it once the stage is recheck."),
            _ => NotInBook("item", "an id from items or look"),
        };
    }

    private static ProblemHttpResult NothingFollowed => Refused("No storm is followed in this garden now, so there is nothing to answer to. Look at the stage.");

    private static ProblemHttpResult Refused(string detail) => ApiProblem.Of(StatusCodes.Status409Conflict, detail);

    private static ProblemHttpResult NotInBook(string member, string wanted) => ApiProblem.Of(StatusCodes.Status404NotFound, $"{member}: there is no such one here, or it is not for whoever asks. Send {wanted}.");
}
