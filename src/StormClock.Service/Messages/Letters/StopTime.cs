using StormClock.Core.Reminders;
using StormClock.Core.Units;
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

        if (!IsByLeaving(brief.Leave, brief.LeaveBy, brief.StopEarliest))
        {
            yield return new Lead(Wind(brief.StopEarliest, brief.StopLikely, times, context.Speech));
        }

        if (brief.SoonerStops.Count > 0)
        {
            yield return new Paragraph(context.Say("stop.sooner", ("stops", string.Join("; ", brief.SoonerStops.Select(stop => Sooner(stop, context))))));
        }
    }

    /// <summary>Whether leaving is what stops the work, and no wind.</summary>
    public static bool IsByLeaving(bool leave, Instant? leaveBy, Instant? stop) => leave && leaveBy is { } by && stop >= Moments.QuarterBefore(by);

    private static string Sooner(ClassStop stop, LetterContext context)
    {
        var work = Words.Of(stop.Class, context.Speech);
        return context.Times.IsPast(stop.At)
            ? context.Say("stop.sooner.now", ("work", work))
            : context.Say("stop.sooner.by", ("work", work), ("time", context.Times.Deadline(stop.At)));
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
