using System.Diagnostics.CodeAnalysis;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Desk;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Garden;

/// <summary>Lets a visitor into a room of a garden, or says why not.</summary>
internal sealed class GardenDoor(GardenShelf shelf, GardenDesk desk, IClock clock, IAntiforgery antiforgery)
{
    public bool TryEnter(HttpContext context, string gardenId, GardenRoom room, [NotNullWhen(true)] out GardenVisit? visit, [NotNullWhen(false)] out IResult? refusal)
    {
        visit = Find(context, gardenId, room);
        refusal = null;
        if (visit is not null)
        {
            if (room == GardenRoom.Walk) LetForms(context.Response);
            if (room is GardenRoom.Walk or GardenRoom.PlotMap or GardenRoom.After) PageHeaders.AllowOwnPictures(context.Response);
            return true;
        }

        refusal = Doorkeeper.Of(context).Kind == VisitorKind.Stranger && HttpMethods.IsGet(context.Request.Method) ? See(context, $"{Ways.Up(context.Request)}in") : Notices.NotForYou(context.Request);
        return false;
    }

    /// <summary>Null for a garden that is not there, or a room that is not for this visitor.</summary>
    public GardenVisit? Find(HttpContext context, string gardenId, GardenRoom room)
    {
        var visitor = Doorkeeper.Of(context);
        return shelf.Find(gardenId) is { } book && visitor.MayEnter(room, book, shelf.Books)
            ? new(visitor, book, shelf.Books, desk.Latest.GetValueOrDefault(book.Id), room, clock.GetCurrentInstant()) { Here = Ways.ToGarden(context.Request) }
            : null;
    }

    /// <summary>On the walk a script keeps forms that cannot be sent, and the way back must find what was typed.</summary>
    private static void LetForms(HttpResponse response)
    {
        PageHeaders.AllowOwnScriptThatSends(response);
        response.Headers.CacheControl = "private, no-cache";
    }

    /// <summary>The same visit with the book as it is in force now.</summary>
    public GardenVisit Again(GardenVisit visit) => shelf.Find(visit.Book.Id) is { } book ? visit with { Book = book } : visit;

    /// <summary>The form of a visitor who may be here; the refusal where it is none of ours, or stale.</summary>
    public async Task<(IFormCollection? Form, IResult? Refusal)> ReadAsync(HttpContext context)
    {
        if (await LinkEndpoints.ReadFormAsync(context.Request) is not { } form) return (null, Notices.FormUnread(context.Request));
        return await IsOursAsync(context) ? (form, null) : (null, Notices.FormStale(context.Request));
    }

    /// <summary>Whether a form that was read comes from one of our pages, in this browser.</summary>
    public Task<bool> IsOursAsync(HttpContext context) => antiforgery.IsRequestValidAsync(context);

    public static RazorComponentResult<TView> Page<TView>(GardenVisit visit, params (string Name, object? Value)[] more)
        where TView : IComponent =>
        new(more.Prepend(("Visit", visit)).ToDictionary(pair => pair.Item1, pair => pair.Item2));

    /// <summary>After a form: back to a page, so that loading it again repeats nothing. Relative, so that it also holds behind a proxy that puts a folder before our addresses.</summary>
    public static StatusCodeHttpResult See(HttpContext context, string where)
    {
        context.Response.Headers.Location = where;
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }
}
