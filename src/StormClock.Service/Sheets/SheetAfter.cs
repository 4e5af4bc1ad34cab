using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Sheets;

/// <summary>What to look at afterwards: on the sheet already, because the message that asks for it may not come.</summary>
internal static class SheetAfter
{
    public static IEnumerable<SheetList> Of(GardenBook book, Speech speech)
    {
        var looks = RecheckList.After(book, new Dictionary<string, JobState>()).Select(line => line.Item).ToList();
        yield return new(speech.Say("sheet.after"), [speech.Say("sheet.after.how")]);
        yield return new(speech.Say("sheet.after.first"), [.. Names(looks.Where(item => item.Endangers.Count > 0))], Ticks: true);
        yield return new(speech.Say("sheet.after.then"), [.. Names(looks.Where(item => item.Endangers.Count == 0))], Ticks: true);
    }

    private static IEnumerable<string> Names(IEnumerable<Item> items) => items.Select(item => Plain.Line(item.Name));
}
