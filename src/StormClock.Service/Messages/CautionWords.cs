using StormClock.Core.Reminders;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>
/// The cautions in words. Figures from trade.md 1.5 (and 4.1 for lifting) with their marks there: wires, trees near
/// wires, lightning, generator, tetanus and ladder are read or restated by public bodies; water and heat M; alone and
/// lifting C.
/// </summary>
public static class CautionWords
{
    public static string Of(Caution caution, Speech speech) => speech.Word("caution", caution);
}
