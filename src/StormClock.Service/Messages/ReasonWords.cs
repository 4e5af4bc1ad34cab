using StormClock.Core.Garden;
using StormClock.Core.Stages;

namespace StormClock.Service.Messages;

/// <summary>Stage and reason in one sentence, with the source and the number that crossed a limit.</summary>
public static class ReasonWords
{
    public static string Sentence(Stage stage, StageReason reason, UnitSystem units, Times times) =>
        reason.Cause == StageCause.None && stage == Stage.NothingDue
            ? "Nothing due: nothing is within reach of the forecast we have. That is no promise."
            : $"{Words.Of(stage)}: {Because(reason, units, times)}.";

    /// <summary>Begins in lower case and ends without a stop.</summary>
    public static string Because(StageReason reason, UnitSystem units, Times times)
    {
        var source = Source(reason, times);
        var gale = reason.IsLocal ? "wind too strong for work outside" : Amounts.GaleSustained(units);
        return reason.Cause switch
        {
            StageCause.None => $"it holds until a source says more, as of {source}",
            StageCause.Chance => $"{source} puts the chance of {gale} at {Amounts.Chance(reason.Chance ?? 0)}",
            StageCause.Arrival => $"{gale} could arrive{At(" as early as ", reason, times)}, as of {source}",
            StageCause.WorkStops => $"the limit for work outside could be crossed{At(" from ", reason, times)}, as of {source}",
            StageCause.Alert => $"{source} stands for this place{At(", from ", reason, times)}",
            StageCause.UnmatchedAlert => $"{source} may concern this place: its area could not be matched, so look at the official word",
            StageCause.Order => $"{source} orders people to leave or to shelter{(reason.At is { } by ? $" by {times.Exact(by)}" : "")}",
            StageCause.Note => $"a note was entered by hand, {source}",
            StageCause.StartBy => $"the first of this work must be begun{At(" by ", reason, times)}, as of {source}",
            StageCause.OfficialEnd => $"the wind has passed and the official end has come, as of {source}",
            StageCause.WindPassed => $"the wind of the forecast has passed, as of {source}; no official end was heard, so look at the official word first",
            StageCause.TurnedAway => $"the forecast turned away, as of {source}",
            StageCause.Rain => $"{source} has rain of up to {Amounts.Rain(reason.RainMm ?? 0, units)} in a day{At(", from ", reason, times)}; this is for work against water",
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason.Cause, null),
        };
    }

    /// <summary>The source with the time at which it spoke.</summary>
    public static string Source(StageReason reason, Times times)
    {
        var name = Plain.Line(reason.Source);
        if (name.Length == 0) name = "the newest forecast";
        return reason.Issued is { } issued ? $"{name} (issued {times.Exact(issued)})" : name;
    }

    private static string At(string lead, StageReason reason, Times times) =>
        reason.At is { } at ? lead + times.Deadline(at) : "";
}
