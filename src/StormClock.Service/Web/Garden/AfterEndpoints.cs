using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>After the wind: what to look at, what became of it, what to undo.</summary>
internal sealed class AfterEndpoints(GardenDoor door, StormStore store, IJobBook answers)
{
    private const int LongestNote = 500;

    public IResult Show(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        var states = States(visit);
        var lines = visit.Stage.Stage == Stage.Recheck ? RecheckList.After(visit.Book, states) : RecheckList.Undo(visit.Book, states).Where(line => !IsDone(states, line.Token)).ToList();
        return GardenDoor.Page<AfterView>(
            visit,
            ("Lines", lines),
            ("DoneAt", states),
            ("Found", Found(visit).Select(found => found.Outcome).ToList()),
            ("Told", context.Request.Query["told"].ToString()));
    }

    /// <summary>What became of one thing, in one press; the look at it is then done.</summary>
    public async Task<IResult> RecordAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        if (form["press"].ToString().Split(' ') is not [var word, var itemId] || visit.Book.Items.FirstOrDefault(item => item.Id == itemId) is not { } item
            || OutcomeWords.Parse(word) is not { } kind || visit.Stage is not { Stage: Stage.Recheck, EpisodeId: { } episode }) return Notices.FormUnread(context.Request);

        var note = form["note"].ToString().Trim();
        var states = States(visit);
        var outcome = new Outcome(
            item.Id, kind, visit.Now, visit.Person.Name, note.Length > LongestNote ? note[..LongestNote] : note,
            [.. item.Jobs.Where(job => IsDone(states, job.Id)).Select(job => job.Kind).Distinct()], Gust(visit, item));
        await store.WriteAsync(transaction => Outcomes.Put(transaction, visit.Book.Id, episode, outcome));
        await answers.AnswerAsync(new(AckPurpose.Job, visit.Book.Id, episode, visit.Person.Id, BriefLines.LookToken(item), visit.Now + LinkMaker.Life), JobAnswer.Done, visit.Now);
        return GardenDoor.See(context, $"after?told={Uri.EscapeDataString(item.Id)}");
    }

    /// <summary>One thing, for a note with its outcome.</summary>
    public IResult Item(string garden, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        return visit.Book.Items.FirstOrDefault(known => known.Id == item) is { } found
            ? GardenDoor.Page<OutcomeView>(visit, ("Item", found), ("Found", Found(visit).Select(pair => pair.Outcome).FirstOrDefault(outcome => outcome.ItemId == found.Id)))
            : Notices.NotForYou(context.Request);
    }

    private double? Gust(GardenVisit visit, Item item) =>
        store.Read(reader => Episodes.Newest(reader, visit.Book.Id)) is { } record && record.EpisodeId == visit.Stage.EpisodeId
            && record.Gust10MMps.TryGetValue(visit.Book.AreaOf(item).SiteId, out var gust) ? gust : null;

    private IEnumerable<(string EpisodeId, Outcome Outcome)> Found(GardenVisit visit) =>
        store.Read(reader => Outcomes.OfGarden(reader, visit.Book.Id)).Where(found => found.EpisodeId == visit.Stage.EpisodeId);

    private Dictionary<string, JobState> States(GardenVisit visit) =>
        visit.Stage.EpisodeId is { } episode ? store.Read(reader => JobStates.OfEpisode(reader, visit.Book.Id, episode)).ToDictionary(state => state.JobId) : [];

    private static bool IsDone(Dictionary<string, JobState> states, string token) => states.TryGetValue(token, out var state) && state.Progress == JobProgress.Done;
}
