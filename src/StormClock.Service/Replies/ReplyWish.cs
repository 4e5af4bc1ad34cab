namespace StormClock.Service.Replies;

/// <summary>What an answer wants of the jobs of its message.</summary>
/// <param name="Work">For each verb the numbers, counted from 1.</param>
/// <param name="Unknown">Numbers that the message does not show.</param>
/// <param name="Contradicts">One job is said to be two things: then nothing of it is taken.</param>
public sealed record ReplyWish(IReadOnlyList<(ReplyVerb Verb, IReadOnlyList<int> Numbers)> Work, IReadOnlyList<int> Unknown, bool Contradicts)
{
    /// <summary>A verb without numbers means every job that no other line names: "done", and below it "cannot 2".</summary>
    /// <param name="jobs">How many the message shows.</param>
    public static ReplyWish Of(IReadOnlyList<ReplyCommand> commands, int jobs)
    {
        var said = commands.SelectMany(command => command.Numbers.Select(number => (Number: number, command.Verb))).Distinct().ToList();
        var known = said.Where(pair => pair.Number >= 1 && pair.Number <= jobs).ToList();
        var rest = Enumerable.Range(1, jobs).Except(known.Select(pair => pair.Number));
        var all = commands.Where(command => command.Numbers.Count == 0).Take(1).SelectMany(command => rest.Select(number => (Number: number, command.Verb)));
        return new(
            [.. known.Concat(all).GroupBy(pair => pair.Verb).Select(same => (same.Key, (IReadOnlyList<int>)[.. same.Select(pair => pair.Number).Order()]))],
            [.. said.Except(known).Select(pair => pair.Number).Distinct()],
            known.Count > known.DistinctBy(pair => pair.Number).Count());
    }
}
