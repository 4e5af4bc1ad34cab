using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api.Shapes;

/// <summary>What there is to do when it is over. Look before lifting; nothing here says that it is safe to go out.</summary>
/// <param name="Garden">Its id.</param>
/// <param name="Now">When this was told.</param>
/// <param name="Stage">Outcomes are taken while it is recheck.</param>
/// <param name="StoodDown">When the forecast turned away; null otherwise.</param>
/// <param name="Cautions">Sentences to show with the work, in the caller's language.</param>
/// <param name="Look">Things to look at, what can hurt somebody first. Empty before recheck.</param>
/// <param name="Undo">What was done and must be undone. Empty while nobody works outside.</param>
/// <param name="Found">What was found so far, oldest first.</param>
internal sealed record ApiAfter(
    string Garden, Instant Now, Stage Stage, Instant? StoodDown, IReadOnlyList<string> Cautions, IReadOnlyList<ApiLook> Look, IReadOnlyList<ApiUndo> Undo, IReadOnlyList<ApiFound> Found)
{
    public static ApiAfter Of(GardenVisit visit, AfterWork after)
    {
        IReadOnlyList<RecheckLine> lines = visit.WorkIsOver ? [] : after.Lines;
        return new(
            visit.Book.Id,
            visit.Now,
            visit.Stage.Stage,
            visit.Stage.StoodDown,
            ApiTokens.Sentences(
                visit.WorkIsOver ? CautionsFor.Closed : CautionsFor.Work([.. lines.Select(line => BriefLines.Find(visit.Book, line.Token)).OfType<BriefJob>()], after: true), visit.Speech),
            [.. lines.Where(line => line.IsLook).Select(line => ApiLook.Of(visit, line))],
            [.. lines.Where(line => !line.IsLook).Select(line => ApiUndo.Of(visit, line, after.States))],
            [.. after.Found.Select(ApiFound.Of)]);
    }
}

/// <summary>A thing to look at.</summary>
/// <param name="Item">Its id; what an outcome names.</param>
/// <param name="Name">As the book has it.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Area">Id of its area.</param>
/// <param name="Endangers">Who or what it can hurt.</param>
/// <param name="TakeCare">What to beware of, in the caller's language.</param>
internal sealed record ApiLook(string Item, string Name, int Count, string Area, IReadOnlyList<string> Endangers, IReadOnlyList<string> TakeCare)
{
    public static ApiLook Of(GardenVisit visit, RecheckLine line) => new(
        line.Item.Id, line.Item.Name, line.Item.Count, line.Item.AreaId, line.Item.Endangers, line.Item.Caution is { } caution ? [visit.Speech.Catalogue(caution)] : []);
}

/// <summary>Something to undo.</summary>
/// <param name="Id">What an answer names as its job.</param>
/// <param name="Item">Id of the thing.</param>
/// <param name="Area">Id of its area.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Title">The same in words, in the caller's language.</param>
/// <param name="TakeCare">What to beware of, in the caller's language.</param>
/// <param name="DoneBy">Name of who did before the storm what is undone now.</param>
/// <param name="DoneAt">When that was said.</param>
internal sealed record ApiUndo(string Id, string Item, string Area, JobKind Kind, string Title, IReadOnlyList<string> TakeCare, string? DoneBy, Instant? DoneAt)
{
    public static ApiUndo Of(GardenVisit visit, RecheckLine line, IReadOnlyDictionary<string, JobState> states)
    {
        var before = line.Item.Jobs.Where(job => BriefLines.UndoToken(job) == line.Token).Select(job => states.GetValueOrDefault(job.Id)).FirstOrDefault();
        return new(
            line.Token, line.Item.Id, line.Item.AreaId, line.Kind, Words.Title(BriefLines.Line(visit.Book, line.Item, line.Token, line.Kind), visit.Speech),
            ApiTokens.TakeCare(BriefLines.Find(visit.Book, line.Token), visit.Speech), before?.By, before?.At);
    }
}

/// <summary>What became of one thing.</summary>
/// <param name="Item">Its id.</param>
/// <param name="Outcome">What was found.</param>
/// <param name="Note">In the looker's words; empty for none.</param>
/// <param name="By">Name of the looker.</param>
/// <param name="At">When it was said.</param>
internal sealed record ApiFound(string Item, OutcomeKind Outcome, string Note, string By, Instant At)
{
    public static ApiFound Of(Outcome found) => new(found.ItemId, found.Kind, found.Note, found.By, found.At);
}

/// <summary>What became of one thing, to be kept. Said again, the last word stands.</summary>
/// <param name="Item">Its id.</param>
/// <param name="Outcome">What was found.</param>
/// <param name="Note">In the looker's words, at most 500 characters; may be left out.</param>
internal sealed record ApiOutcome(string Item, OutcomeKind Outcome, string? Note = null);
