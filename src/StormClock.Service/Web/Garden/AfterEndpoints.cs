using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>After the wind: what to look at, what became of it, what to undo.</summary>
internal sealed class AfterEndpoints(GardenDoor door, GardenMemory memory, AnswerDesk answers)
{
    public IResult Show(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        var after = memory.After(visit);
        return GardenDoor.Page<AfterView>(
            visit,
            ("Lines", after.Lines),
            ("DoneAt", after.States),
            ("Found", after.Found),
            ("Told", context.Request.Query["told"].ToString()));
    }

    /// <summary>What became of one thing, in one press; the look at it is then done.</summary>
    public async Task<IResult> RecordAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        if (form["press"].ToString().Split(' ') is not [var word, var item] || OutcomeWords.Parse(word) is not { } kind) return Notices.FormUnread(context.Request);

        var note = form["note"].ToString().Trim();
        return await answers.FoundAsync(visit, item, kind, note.Length > AnswerDesk.LongestNote ? note[..AnswerDesk.LongestNote] : note) == Taken.Kept
            ? GardenDoor.See(context, $"after?told={Uri.EscapeDataString(item)}")
            : Notices.FormUnread(context.Request);
    }

    /// <summary>One thing, for a note with its outcome.</summary>
    public IResult Item(string garden, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        return visit.Book.Items.FirstOrDefault(known => known.Id == item) is { } found
            ? GardenDoor.Page<OutcomeView>(visit, ("Item", found), ("Found", memory.Found(visit).FirstOrDefault(outcome => outcome.ItemId == found.Id)))
            : Notices.NotForYou(context.Request);
    }
}
