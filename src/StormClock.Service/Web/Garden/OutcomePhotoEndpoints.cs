using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Desk;
using StormClock.Service.Photos;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Garden;

/// <summary>Photos of what became of things, once that is said: on its own, so that a photo which does not get through takes no outcome with it.</summary>
internal sealed class OutcomePhotoEndpoints(GardenDoor door, PhotoDesk photos, BookDesk books, Uploads uploads, AfterEndpoints after)
{
    public async Task<IResult> AddAsync(string garden, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return await Uploads.RefuseAsync(context, refusal);
        if (Find(visit, item) is not { } found) return await Uploads.RefuseAsync(context, Notices.NotForYou(context.Request));
        if (Subject(visit, found) is not { } subject || after.FoundOf(visit, found) is null)
            return await Uploads.RefuseAsync(context, Refused(visit.Speech.Say("after.photo.first"), StatusCodes.Status409Conflict));

        return await uploads.TakeAsync(
            context, visit,
            (form, photo) => books.KeepPhotoAsync(
                context, visit, form,
                () => photos.AddAsync(visit.Book.Id, subject, photo, visit.Person.Id, visit.Speech),
                reason => Refused(reason, StatusCodes.Status409Conflict),
                $"after/{item}#photos"),
            (_, reason, status) => Refused(reason, status));

        RazorComponentResult Refused(string reason, int status)
        {
            var page = after.ItemPage(visit, found, [reason]);
            page.StatusCode = status;
            return page;
        }
    }

    /// <summary>By whoever sent it, or sees all of the garden.</summary>
    public async Task<IResult> RemoveAsync(string garden, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.After, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var name = form["press"].ToString();
        if (Find(visit, item) is not { } found || Subject(visit, found) is not { } subject || photos.Find(visit.Book.Id, name) is not { } note || !visit.MayTakeAway(note)) return Notices.NotForYou(context.Request);
        await photos.RemoveAsync(visit.Book.Id, subject, name);
        return GardenDoor.See(context, $"{visit.Here}after/{item}#photos");
    }

    private static Item? Find(GardenVisit visit, string item) => visit.Book.Items.FirstOrDefault(known => known.Id == item);

    /// <summary>Null while no outcomes are recorded.</summary>
    private static string? Subject(GardenVisit visit, Item item) =>
        visit.Stage is { Stage: Stage.Recheck, EpisodeId: { } episode } ? PhotoDesk.OutcomeSubject(episode, item.Id) : null;
}
