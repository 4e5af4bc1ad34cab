using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>Why a job is left, in words: begins in lower case and ends without a stop.</summary>
public static class LeftWords
{
    public static string Of(LeftReason why, Speech speech) => speech.Word(
        "left",
        why.Cause,
        ("count", why.People),
        ("mass", Amounts.Mass(why.MassKg, speech)),
        ("pieces", why.Pieces),
        ("all", why.AllPieces),
        ("circle", why.Circle.Count == 0 ? "" : why.Circle.Aggregate((job, before) => speech.Say("left.circle.waits", ("job", job), ("before", before)))),
        ("by", Plain.Line(why.By)),
        ("crop", speech.Catalogue(why.Crop)));
}
