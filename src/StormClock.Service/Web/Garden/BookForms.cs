using StormClock.Core.Garden;
using StormClock.Service.Books.Edits;
using StormClock.Service.Desk;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Garden;

/// <summary>Forms that change the book.</summary>
internal static class BookForms
{
    private const int LongestMark = 64;

    /// <summary>Of the same form twice at the same moment the second must see the mark of the first.</summary>
    private static readonly SemaphoreSlim OneByOne = new(1);

    /// <summary>One change of the book, once: a form that comes again because its answer got lost on the way is answered as the first time.</summary>
    public static Task<IResult> DoAsync<T>(
        this BookDesk books, HttpContext context, GardenVisit visit, IFormCollection form, Func<GardenBook, BookOutcome<T>> change, Func<IResult> done, Func<IReadOnlyList<string>, IResult> refused, Func<T?, IResult> conflict)
        where T : class => books.DoAsync(context, (visit.Book.Id, visit.Person.Name, visit.Speech), form, change, done, refused, conflict);

    /// <param name="by">Of which garden, in whose name, and what the page speaks.</param>
    public static async Task<IResult> DoAsync<T>(
        this BookDesk books, HttpContext context, (string Garden, string Name, Speech Speech) by, IFormCollection form,
        Func<GardenBook, BookOutcome<T>> change, Func<IResult> done, Func<IReadOnlyList<string>, IResult> refused, Func<T?, IResult> conflict)
        where T : class
    {
        if (Once(form) is not { } once) return Notices.FormUnread(context.Request);
        BookSave<T>? save;
        await OneByOne.WaitAsync(context.RequestAborted);
        try
        {
            if (books.WasTaken(once)) return done();
            save = await books.ChangeAsync(by.Garden, change);
            if (save is BookSave<T>.Saved) await books.IsFirstAsync(once, by.Name);
        }
        finally
        {
            OneByOne.Release();
        }

        switch (save)
        {
            case BookSave<T>.Saved: return done();
            case BookSave<T>.Conflict changed: return conflict(changed.Now);
            case BookSave<T>.Refused no: return refused([.. no.Faults.Select(fault => fault.Reason)]);
            case BookSave<T>.Broken broken: return refused([by.Speech.Say("walk.file-broken"), .. broken.Faults.Select(fault => $"{by.Garden}.yaml:{fault.Line}: {fault.Reason}")]);
            default: return refused([by.Speech.Say("walk.no-file")]);
        }
    }

    /// <summary>The mark by which a form is taken once; null where it has none that can be.</summary>
    public static string? Once(IFormCollection form) => form["once"].ToString() is { Length: > 0 and <= LongestMark } once ? once : null;
}
