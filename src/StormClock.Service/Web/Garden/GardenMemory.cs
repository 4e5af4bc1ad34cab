using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Service.Store;

namespace StormClock.Service.Web.Garden;

/// <summary>What is kept of a garden, as its pages and the API show it.</summary>
internal sealed class GardenMemory(StormStore store)
{
    /// <summary>Last word on each job of this spell.</summary>
    public IReadOnlyList<JobState> States(GardenVisit visit) =>
        visit.Stage.EpisodeId is { } episode ? store.Read(reader => JobStates.OfEpisode(reader, visit.Book.Id, episode)) : [];

    /// <summary>Who is in, and since when; empty while the garden is not closed.</summary>
    public IReadOnlyList<(Person Person, Instant? Since)> WhoIsIn(GardenVisit visit)
    {
        if (visit.Stage is not { Stage: Stage.GardenClosed, EpisodeId: { } episode } closed) return [];
        var said = store.Read(reader => Indoors.OfEpisode(reader, visit.Book.Id, episode));
        return [.. visit.Book.People.Where(person => person.Role != PersonRole.Keeper).Select(person => (person, said.TryGetValue(person.Id, out var at) && at >= closed.Since ? at : (Instant?)null))];
    }

    public AfterWork After(GardenVisit visit)
    {
        var states = States(visit).ToDictionary(state => state.JobId);
        var lines = visit.Stage.Stage == Stage.Recheck
            ? RecheckList.After(visit.Book, states)
            : [.. RecheckList.Undo(visit.Book, states).Where(line => !(states.TryGetValue(line.Token, out var state) && state.Progress == JobProgress.Done))];
        return new(lines, states, Found(visit));
    }

    /// <summary>What became of things in this spell, oldest first.</summary>
    public IReadOnlyList<Outcome> Found(GardenVisit visit) =>
        [.. store.Read(reader => Outcomes.OfGarden(reader, visit.Book.Id)).Where(found => found.EpisodeId == visit.Stage.EpisodeId).Select(found => found.Outcome)];

    /// <summary>Past spells and the present one, newest first.</summary>
    public IReadOnlyList<Spell> Spells(GardenVisit visit)
    {
        var id = visit.Book.Id;
        return store.Read(reader =>
        {
            var outcomes = Outcomes.OfGarden(reader, id);
            return Episodes.OfGarden(reader, id).Select(record => Spell.Of(record, JobStates.OfEpisode(reader, id, record.EpisodeId), outcomes)).ToList();
        });
    }

    /// <summary>What storms have taught of the things that met one.</summary>
    public IReadOnlyList<LimitMove> Moves(GardenVisit visit) =>
        LimitHistory.Of(visit.Book, [.. store.Read(reader => Outcomes.OfGarden(reader, visit.Book.Id)).Select(found => found.Outcome)]);
}

/// <summary>What there is to do when it is over.</summary>
/// <param name="Lines">To look at and to undo, in order.</param>
/// <param name="States">Last word on each job, look and undoing, by its token.</param>
/// <param name="Found">What became of things, oldest first.</param>
internal sealed record AfterWork(IReadOnlyList<RecheckLine> Lines, IReadOnlyDictionary<string, JobState> States, IReadOnlyList<Outcome> Found);
