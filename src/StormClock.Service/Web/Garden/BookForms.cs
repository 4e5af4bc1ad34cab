using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books.Edits;
using StormClock.Service.Desk;
using StormClock.Service.Photos;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Garden;

/// <summary>Forms that change the book.</summary>
internal static class BookForms
{
    private const int LongestMark = 64;

    /// <summary>One change of the book, once: a form that comes again because its answer got lost on the way is answered as the first time.</summary>
    public static Task<IResult> DoAsync<T>(
        this BookDesk books, HttpContext context, GardenVisit visit, IFormCollection form, Func<GardenBook, BookOutcome<T>> change, Func<ValueTask<IResult>> done, Func<IReadOnlyList<string>, IResult> refused, Func<T?, IResult> conflict)
        where T : class => books.DoAsync(context, (visit.Book.Id, visit.Person.Name, visit.Speech), form, change, done, refused, conflict);

    /// <param name="by">Of which garden, in whose name, and what the page speaks.</param>
    public static async Task<IResult> DoAsync<T>(
        this BookDesk books, HttpContext context, (string Garden, string Name, Speech Speech) by, IFormCollection form,
        Func<GardenBook, BookOutcome<T>> change, Func<ValueTask<IResult>> done, Func<IReadOnlyList<string>, IResult> refused, Func<T?, IResult> conflict)
        where T : class
    {
        if (Once(form) is not { } once) return Notices.FormUnread(context.Request);
        var (wasTaken, save) = await books.OnceAsync(once, by.Name, () => books.ChangeAsync(by.Garden, change), save => save is BookSave<T>.Saved, context.RequestAborted);
        if (wasTaken) return await done();
        return save switch
        {
            BookSave<T>.Saved => await done(),
            BookSave<T>.Conflict changed => conflict(changed.Now),
            BookSave<T>.Refused no => refused([.. no.Faults.Select(fault => fault.Reason)]),
            BookSave<T>.Broken broken => refused([by.Speech.Say("walk.file-broken"), .. broken.Faults.Select(fault => $"{by.Garden}.yaml:{fault.Line}: {fault.Reason}")]),
            _ => refused([by.Speech.Say("walk.no-file")]),
        };
    }

    /// <summary>The photo of a form, kept once; then the page that shows it.</summary>
    /// <param name="then">From the garden's pages on.</param>
    public static async Task<IResult> KeepPhotoAsync(
        this BookDesk books, HttpContext context, GardenVisit visit, IFormCollection form, Func<Task<ReadResult<PhotoNote>>> keep, Func<string, IResult> refused, string then)
    {
        if (Once(form) is not { } once) return Notices.FormUnread(context.Request);
        var (wasTaken, kept) = await books.OnceAsync(once, visit.Person.Name, keep, kept => kept.IsGood, context.RequestAborted);
        return wasTaken || kept!.IsGood ? GardenDoor.See(context, $"{visit.Here}{then}") : refused(kept.Faults[0].Reason);
    }

    /// <summary>The mark by which a form is taken once; null where it has none that can be.</summary>
    private static string? Once(IFormCollection form) => form["once"].ToString() is { Length: > 0 and <= LongestMark } once ? once : null;
}
