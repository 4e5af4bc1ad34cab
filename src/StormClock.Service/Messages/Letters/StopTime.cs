namespace StormClock.Service.Messages.Letters;

/// <summary>The first thing said: by when all work outside must have ended.</summary>
internal static class StopTime
{
    /// <summary>Short, for a lock screen.</summary>
    public static string InSubject(LetterContext context)
    {
        var (brief, times) = (context.Brief, context.Times);
        if (brief is { Leave: true, LeaveBy: { } by }) return $"Leave by {times.Exact(by)}";
        if (brief.StopEarliest is not { } earliest) return "No stop time yet";

        return times.IsPast(earliest) ? "Unsafe wind at any time now" : $"Stop by {times.Deadline(earliest)}";
    }

    public static IEnumerable<Block> Of(LetterContext context)
    {
        var (brief, times) = (context.Brief, context.Times);
        if (brief is { Leave: true, LeaveBy: { } by })
        {
            yield return new Lead($"Leave by {times.Exact(by)}. The official order comes before all garden work.");
        }

        yield return new Lead(Wind(brief.StopEarliest, brief.StopLikely, times));
    }

    /// <summary>Also for pages.</summary>
    public static string Wind(Instant? earliest, Instant? likely, Times times)
    {
        if (earliest is not { } first) return "No stop time can be named yet. It may come with any new forecast.";

        var more = likely is { } then && !times.IsPast(then) ? $", more likely from {times.Deadline(then)}" : "";
        return times.IsPast(first)
            ? $"Unsafe wind could come at any time now{more}. Stop work outside and go in."
            : $"Unsafe wind could come as early as {times.Deadline(first)}{more}. All work outside stops before that.";
    }
}
