using StormClock.Service.Wording;

namespace StormClock.Service.Messages.Letters;

/// <summary>The first thing said: by when all work outside must have ended.</summary>
internal static class StopTime
{
    /// <summary>Short, for a lock screen.</summary>
    public static string InSubject(LetterContext context)
    {
        var (brief, times) = (context.Brief, context.Times);
        if (brief is { Leave: true, LeaveBy: { } by }) return context.Say("leave.by", ("time", times.Exact(by)));
        if (brief.StopEarliest is not { } earliest) return context.Say("stop.subject.none");

        return times.IsPast(earliest) ? context.Say("stop.subject.now") : context.Say("stop.subject.by", ("time", times.Deadline(earliest)));
    }

    public static IEnumerable<Block> Of(LetterContext context)
    {
        var (brief, times) = (context.Brief, context.Times);
        if (brief is { Leave: true, LeaveBy: { } by })
        {
            yield return new Lead(context.Say("stop.leave-by", ("time", times.Exact(by))));
        }

        yield return new Lead(Wind(brief.StopEarliest, brief.StopLikely, times, context.Speech));
    }

    /// <summary>Also for pages.</summary>
    public static string Wind(Instant? earliest, Instant? likely, Times times, Speech speech)
    {
        if (earliest is not { } first) return speech.Say("stop.none");

        if (likely is { } then && !times.IsPast(then))
        {
            return times.IsPast(first)
                ? speech.Say("stop.now.likely", ("likely", times.Deadline(then)))
                : speech.Say("stop.by.likely", ("time", times.Deadline(first)), ("likely", times.Deadline(then)));
        }

        return times.IsPast(first) ? speech.Say("stop.now") : speech.Say("stop.by", ("time", times.Deadline(first)));
    }
}
