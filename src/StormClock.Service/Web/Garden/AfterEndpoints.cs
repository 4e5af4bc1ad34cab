using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Service.Feeds;
using StormClock.Service.Photos;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>After the wind: what to look at, what became of it, what to undo.</summary>
internal sealed class AfterEndpoints(GardenDoor door, GardenMemory memory, AnswerDesk answers, PhotoDesk photos, Inbox inbox)
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
            ("Photos", PhotosOf(visit)),
            ("Whereabouts", Whereabouts(visit)),
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

    /// <summary>One thing, for a note and photos with its outcome.</summary>
    public IResult Item(string garden, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        return visit.Book.Items.FirstOrDefault(known => known.Id == item) is { } found
            ? ItemPage(visit, found, [])
            : Notices.NotForYou(context.Request);
    }

    /// <summary>Also the answer to a photo that was not taken.</summary>
    public RazorComponentResult<OutcomeView> ItemPage(GardenVisit visit, Item item, IReadOnlyList<string> faults) =>
        GardenDoor.Page<OutcomeView>(visit, ("Item", item), ("Found", FoundOf(visit, item)), ("Faults", faults), ("Photos", PhotosOf(visit)[item.Id].ToList()));

    /// <summary>What was said last to have become of it in this spell; null for nothing.</summary>
    public Outcome? FoundOf(GardenVisit visit, Item item) => memory.Found(visit).LastOrDefault(outcome => outcome.ItemId == item.Id);

    private ILookup<string, PhotoNote> PhotosOf(GardenVisit visit) => photos.OfOutcomes(visit.Book.Id, visit.Stage.EpisodeId ?? "");

    /// <summary>Where the storm is that has turned away; null where none has, or that is not known.</summary>
    private string? Whereabouts(GardenVisit visit) =>
        visit.Stage is { StoodDown: not null, Stage: not Stage.Recheck } && CentreFix.Newest(inbox.Ledger, visit.Decision?.Cause ?? "", visit.Now) is { } fix
            ? WhereaboutsWords.Of(fix, visit)
            : null;
}
