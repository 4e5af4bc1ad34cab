using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Store;

namespace StormClock.Service.Web.Garden;

/// <summary>The work of a garden as its pages show it.</summary>
/// <param name="Next">Planned, in the order of the plan.</param>
/// <param name="Answered">Of which somebody said something.</param>
/// <param name="LeftOut">Not in the plan, with the reason.</param>
/// <param name="Open">Of the book, planned nowhere and not answered: all work while nothing is due or the garden is closed.</param>
public sealed record GardenWork(IReadOnlyList<LinkJob> Next, IReadOnlyList<LinkJob> Answered, IReadOnlyList<LinkJob> LeftOut, IReadOnlyList<LinkJob> Open)
{
    /// <param name="personId">Only the work planned for this person; null for everybody's.</param>
    public static GardenWork Of(GardenBook book, Decision? decision, IReadOnlyList<JobState> states, string? personId)
    {
        var said = states.ToDictionary(state => state.JobId);
        var plan = decision?.Plan;
        var names = book.People.ToDictionary(person => person.Id, person => person.Name);
        List<LinkJob> next = [.. from planned in plan?.Jobs ?? []
                                 where personId is null || planned.People.Contains(personId)
                                 let line = BriefLines.Line(book, planned.Job) with { Start = planned.Start, StartBy = planned.StartBy, PeopleNames = [.. planned.People.Select(id => names.GetValueOrDefault(id, id))] }
                                 select Line(line, said)];
        List<LinkJob> left = personId is null
            ? [.. (plan?.LeftOut ?? []).Concat(plan?.BetterLeft ?? []).Where(job => !job.Answered).Select(job => Line(BriefLines.Line(book, job.Job) with { Fallback = job.Fallback }, said) with { LeftOut = job.Why })]
            : [];
        List<LinkJob> answered = [.. from state in states
                                     where state.Progress != JobProgress.Open && !state.JobId.Contains(':', StringComparison.Ordinal)
                                     where next.All(job => job.Job.Token != state.JobId) && (personId is null || state.By == names.GetValueOrDefault(personId))
                                     let line = BriefLines.Find(book, state.JobId)
                                     where line is not null
                                     select Line(line, said)];
        var shown = next.Concat(left).Concat(answered).Select(job => job.Job.Token).ToHashSet();
        List<LinkJob> open = plan is null ? [.. book.Jobs.Where(job => !shown.Contains(job.Id)).Select(job => Line(BriefLines.Line(book, job), said))] : [];
        return new(next, answered, left, open);
    }

    public int Count => Next.Count + LeftOut.Count + Answered.Count + Open.Count;

    /// <summary>Some of it, in the order next, left out, answered, open: a page of a very large garden would else be too much for a weak connection.</summary>
    public GardenWork Part(int from, int count)
    {
        return new(Cut(Next, 0), Cut(Answered, Next.Count + LeftOut.Count), Cut(LeftOut, Next.Count), Cut(Open, Next.Count + LeftOut.Count + Answered.Count));

        List<LinkJob> Cut(IReadOnlyList<LinkJob> jobs, int before) => [.. jobs.Where((_, at) => before + at >= from && before + at < from + count)];
    }

    private static LinkJob Line(BriefJob job, Dictionary<string, JobState> said)
    {
        var state = said.GetValueOrDefault(job.Token);
        return new(job, state?.Progress ?? JobProgress.Open, state?.By, state?.At, state?.Why);
    }
}
