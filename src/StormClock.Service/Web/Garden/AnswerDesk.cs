using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Store;

namespace StormClock.Service.Web.Garden;

/// <summary>What became of something that a visitor said.</summary>
internal enum Taken
{
    Kept,

    /// <summary>Nothing is followed that it could be said of.</summary>
    NotNow,

    /// <summary>The book has no such job, thing or person.</summary>
    Unknown,

    /// <summary>It is for somebody else to say.</summary>
    NotTheirs,
}

/// <summary>Takes what visitors say of work, of themselves and of things, from pages and by the API.</summary>
internal sealed class AnswerDesk(StormStore store, IJobBook book, GardenMemory memory)
{
    /// <summary>Characters of a note with an outcome.</summary>
    public const int LongestNote = 500;

    /// <param name="token">Of a job, a look or an undoing (<see cref="BriefLines"/>).</param>
    public async Task<Taken> AnswerAsync(GardenVisit visit, string token, JobAnswer answer)
    {
        if (visit.Stage.EpisodeId is not { } episode) return Taken.NotNow;
        if (BriefLines.Find(visit.Book, token) is null) return Taken.Unknown;
        if (!IsTheirs(visit, token)) return Taken.NotTheirs;
        await book.AnswerAsync(new(AckPurpose.Job, visit.Book.Id, episode, visit.Person.Id, token, Ends(visit)), answer, visit.Now);
        return Taken.Kept;
    }

    /// <summary>"I am in" of one person.</summary>
    public async Task<Taken> InAsync(GardenVisit visit, string personId)
    {
        if (visit.Stage.EpisodeId is not { } episode) return Taken.NotNow;
        if (visit.Book.People.FirstOrDefault(person => person.Id == personId) is not { } person) return Taken.Unknown;
        if (!visit.SeesAll && person.Id != visit.Person.Id) return Taken.NotTheirs;
        await book.AnswerAsync(new(AckPurpose.Indoors, visit.Book.Id, episode, person.Id, "", Ends(visit)), JobAnswer.Done, visit.Now);
        return Taken.Kept;
    }

    /// <summary>What became of one thing; the look at it is then done.</summary>
    /// <param name="note">At most <see cref="LongestNote"/> characters; empty for none.</param>
    public async Task<Taken> FoundAsync(GardenVisit visit, string itemId, OutcomeKind kind, string note)
    {
        if (visit.Stage is not { Stage: Stage.Recheck, EpisodeId: { } episode }) return Taken.NotNow;
        if (visit.Book.Items.FirstOrDefault(item => item.Id == itemId) is not { } item) return Taken.Unknown;
        var done = memory.States(visit).Where(state => state.Progress == JobProgress.Done).Select(state => state.JobId).ToHashSet();
        var outcome = new Outcome(
            item.Id, kind, visit.Now, visit.Person.Name, note, [.. item.Jobs.Where(job => done.Contains(job.Id)).Select(job => job.Kind).Distinct()], Gust(visit, item));
        await store.WriteAsync(transaction => Outcomes.Put(transaction, visit.Book.Id, episode, outcome));
        await book.AnswerAsync(new(AckPurpose.Job, visit.Book.Id, episode, visit.Person.Id, BriefLines.LookToken(item), Ends(visit)), JobAnswer.Done, visit.Now);
        return Taken.Kept;
    }

    /// <summary>A helper answers for work that is planned for them, was told them, or that they answered before; after the wind for everything.</summary>
    private bool IsTheirs(GardenVisit visit, string token)
    {
        if (visit.SeesAll || token.Contains(':', StringComparison.Ordinal)) return true;
        return (visit.Decision?.Plan?.Jobs.Any(job => job.Job.Id == token && job.People.Contains(visit.Person.Id)) ?? false)
            || (visit.Decision?.Standing.Announced.Jobs.Any(job => job.JobId == token && job.People.Contains(visit.Person.Id)) ?? false)
            || memory.States(visit).Any(state => state.JobId == token && state.By == visit.Person.Name);
    }

    private double? Gust(GardenVisit visit, Item item) =>
        store.Read(reader => Episodes.Newest(reader, visit.Book.Id)) is { } record && record.EpisodeId == visit.Stage.EpisodeId
            && record.Gust10MMps.TryGetValue(visit.Book.AreaOf(item).SiteId, out var gust) ? gust : null;

    private static Instant Ends(GardenVisit visit) => visit.Now + LinkMaker.Life;
}
