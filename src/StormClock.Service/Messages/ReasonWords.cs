using StormClock.Core.Stages;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>Stage and reason in one sentence, with the source and the number that crossed a limit.</summary>
public static class ReasonWords
{
    public static string Sentence(Stage stage, StageReason reason, Speech speech, Times times) =>
        reason.Cause == StageCause.None && stage == Stage.NothingDue
            ? speech.Say("reason.nothing-due")
            : speech.Say("reason", ("stage", Words.Of(stage, speech)), ("because", Because(reason, speech, times)));

    /// <summary>Begins in lower case and ends without a stop.</summary>
    public static string Because(StageReason reason, Speech speech, Times times)
    {
        var source = Source(reason, speech, times);
        var wind = reason.IsLocal ? speech.Say("wind.local") : Amounts.GaleSustained(speech);
        var at = reason.At is { } moment ? times.Deadline(moment) : null;
        return reason.Cause switch
        {
            StageCause.Chance => speech.Say("because.chance", ("source", source), ("wind", wind), ("chance", Amounts.Chance(reason.Chance ?? 0, speech))),
            StageCause.Arrival => At("because.arrival", ("wind", wind), ("source", source)),
            StageCause.WorkStops => At("because.work-stops", ("source", source)),
            StageCause.Alert => At("because.alert", ("source", source)),
            StageCause.Order => reason.At is { } by ? speech.Say("because.order.by", ("source", source), ("time", times.Exact(by))) : speech.Say("because.order", ("source", source)),
            StageCause.LeaveByNote => At("because.leave-by-note", ("source", source)),
            StageCause.StartBy => At("because.start-by", ("source", source)),
            StageCause.Rain => At("because.rain", ("source", source), ("rain", Amounts.Rain(reason.RainMm ?? 0, speech))),
            StageCause.None => speech.Say("because.none", ("source", source)),
            StageCause.UnmatchedAlert => speech.Say("because.unmatched-alert", ("source", source)),
            StageCause.Note => speech.Say("because.note", ("source", source)),
            StageCause.OfficialEnd => speech.Say("because.official-end", ("source", source)),
            StageCause.WindPassed => speech.Say("because.wind-passed", ("source", source)),
            StageCause.TurnedAway => speech.Say("because.turned-away", ("source", source)),
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason.Cause, null),
        };

        string At(string key, params (string, object)[] values) =>
            at is null ? speech.Say(key, values) : speech.Say($"{key}.at", [.. values, ("time", at)]);
    }

    /// <summary>The source with the time at which it spoke.</summary>
    public static string Source(StageReason reason, Speech speech, Times times)
    {
        var name = SourceWords.Of(Plain.Line(reason.Source), speech);
        return reason.Issued is { } issued ? speech.Say("source.issued", ("source", name), ("time", times.Exact(issued))) : name;
    }
}
