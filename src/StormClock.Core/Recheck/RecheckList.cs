using StormClock.Core.Garden;
using StormClock.Core.Reminders;

namespace StormClock.Core.Recheck;

/// <summary>One thing to look at or undo after the wind.</summary>
/// <param name="Token">Names the line in links (<see cref="BriefLines"/>).</param>
public sealed record RecheckLine(string Token, Item Item, JobKind Kind)
{
    /// <summary>A look; else something is undone.</summary>
    public bool IsLook => Token == BriefLines.LookToken(Item);
}

/// <summary>
/// What to do when it is over, in order: first look at what can hurt somebody, then at the rest by area, then undo what was
/// done for the storm (trade.md 7: look before lifting). What was answered done is left out.
/// </summary>
public static class RecheckList
{
    /// <param name="states">Last word on each job, look and undoing, by its token.</param>
    public static IReadOnlyList<RecheckLine> After(GardenBook book, IReadOnlyDictionary<string, JobState> states)
    {
        var order = book.Areas.Select((area, i) => (area.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);
        var looks = book.Items
            .OrderByDescending(item => item.Endangers.Count > 0)
            .ThenBy(item => order[item.AreaId])
            .Select(item => new RecheckLine(BriefLines.LookToken(item), item, JobKind.Check));

        // A check by way of undoing is the same look again.
        return [.. looks.Concat(Undo(book, states).Where(line => line.Kind != JobKind.Check)).Where(line => !IsDone(states, line.Token))];
    }

    /// <summary>What was done and must be undone; the whole of a stand down's list.</summary>
    public static IReadOnlyList<RecheckLine> Undo(GardenBook book, IReadOnlyDictionary<string, JobState> states) =>
        [.. from item in book.Items
            from job in item.Jobs
            where job.Undo is not null && states.TryGetValue(job.Id, out var state) && state.Progress is JobProgress.Done or JobProgress.Started
            select new RecheckLine(BriefLines.UndoToken(job), item, job.Undo!.Value)];

    private static bool IsDone(IReadOnlyDictionary<string, JobState> states, string token) => states.TryGetValue(token, out var state) && state.Progress == JobProgress.Done;
}
