using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Service.Messages;

namespace StormClock.Service.Sheets;

/// <summary>What to look at afterwards: on the sheet already, because the message that asks for it may not come.</summary>
internal static class SheetAfter
{
    public static IEnumerable<SheetList> Of(GardenBook book)
    {
        var looks = RecheckList.After(book, new Dictionary<string, JobState>()).Select(line => line.Item).ToList();
        yield return new("After the storm", ["Go out only when no order forbids it, the official end has come, the wind is down and it is light. Look from the door first. Look before you touch: wires, gas, leaning trees, water, sharp sheets. If there is any, stay in and call. Undo last: each job says how."]);
        yield return new("After: look first at", [.. Names(looks.Where(item => item.Endangers.Count > 0))], Ticks: true);
        yield return new("After: then look at", [.. Names(looks.Where(item => item.Endangers.Count == 0))], Ticks: true);
    }

    private static IEnumerable<string> Names(IEnumerable<Item> items) => items.Select(item => Plain.Line(item.Name));
}
