using StormClock.Core.Garden;
using StormClock.Service.Books.Edits;
using StormClock.Service.Desk;

namespace StormClock.Service.Web.Garden;

/// <summary>Forms that change the book.</summary>
internal static class BookForms
{
    private const int LongestMark = 64;

    /// <summary>One change of the book, once: a form that comes again because its answer got lost on the way is answered as the first time.</summary>
    public static async Task<IResult> DoAsync<T>(
        this BookDesk books, HttpContext context, GardenVisit visit, IFormCollection form, Func<GardenBook, BookOutcome<T>> change, Func<IResult> done, Func<IReadOnlyList<string>, IResult> refused, Func<T?, IResult> conflict)
        where T : class
    {
        if (Once(form) is not { } once) return Notices.FormUnread(context.Request);
        if (books.WasTaken(once)) return done();
        switch (await books.ChangeAsync(visit.Book.Id, change))
        {
            case BookSave<T>.Saved:
                await books.IsFirstAsync(once, visit.Person.Name);
                return done();
            case BookSave<T>.Conflict changed: return conflict(changed.Now);
            case BookSave<T>.Refused no: return refused([.. no.Faults.Select(fault => fault.Reason)]);
            case BookSave<T>.Broken broken: return refused([visit.Speech.Say("walk.file-broken"), .. broken.Faults.Select(fault => $"{visit.Book.Id}.yaml:{fault.Line}: {fault.Reason}")]);
            default: return refused([visit.Speech.Say("walk.no-file")]);
        }
    }

    /// <summary>The mark by which a form is taken once; null where it has none that can be.</summary>
    public static string? Once(IFormCollection form) => form["once"].ToString() is { Length: > 0 and <= LongestMark } once ? once : null;
}
