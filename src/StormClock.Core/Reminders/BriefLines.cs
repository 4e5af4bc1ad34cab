using StormClock.Core.Garden;

namespace StormClock.Core.Reminders;

/// <summary>
/// Shows a piece of work as messages and pages do, found by its token: a job's id, <c>undo:</c> and a job's id, or
/// <c>look:</c> and an item's id.
/// </summary>
public static class BriefLines
{
    private const string UndoMark = "undo:";
    private const string LookMark = "look:";

    public static string UndoToken(Job job) => UndoMark + job.Id;

    public static string LookToken(Item item) => LookMark + item.Id;

    /// <summary>Null when the book has no such work (any more).</summary>
    public static BriefJob? Find(GardenBook book, string token)
    {
        if (token.StartsWith(LookMark, StringComparison.Ordinal))
        {
            var item = book.Items.FirstOrDefault(item => LookToken(item) == token);
            return item is null ? null : Line(book, item, token, JobKind.Check);
        }

        var undo = token.StartsWith(UndoMark, StringComparison.Ordinal);
        var id = undo ? token[UndoMark.Length..] : token;
        if (book.Jobs.FirstOrDefault(job => job.Id == id) is not { } job) return null;
        if (!undo) return Line(book, job);
        return job.Undo is { } kind ? Line(book, book.ItemOf(job), token, kind) with { Class = job.Class, TakeCare = Line(book, job).TakeCare } : null;
    }

    public static BriefJob Line(GardenBook book, Job job) =>
        Line(book, book.ItemOf(job), job.Id, job.Kind) with
        {
            Minutes = job.Minutes,
            Bring = job.Materials,
            Class = job.Class,
            StoreName = book.Stores.FirstOrDefault(store => store.Id == job.StoreId)?.Name,
            TakeCare = [.. new[] { job.Caution, book.ItemOf(job).Caution }.OfType<string>()],
        };

    public static BriefJob Line(GardenBook book, Item item, string token, JobKind kind)
    {
        var area = book.AreaOf(item);
        return new(token, kind, item.Name, item.Count, area.Name, book.SiteOf(area).Name, 0, [], [], null, null, WorkClass.Ground);
    }
}
