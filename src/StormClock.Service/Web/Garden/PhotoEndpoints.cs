using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Desk;
using StormClock.Service.Photos;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Garden;

/// <summary>Photos of things on the walk, and the files of all photos for whoever may enter the room they belong to.</summary>
internal sealed class PhotoEndpoints(GardenDoor door, PhotoDesk photos, BookDesk books, Uploads uploads, WalkEndpoints walk)
{
    public IResult Large(string garden, string name, HttpContext context) => Show(garden, name, context, thumbnail: false);

    public IResult Small(string garden, string name, HttpContext context) => Show(garden, name, context, thumbnail: true);

    public async Task<IResult> AddAsync(string garden, string area, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return await Uploads.RefuseAsync(context, refusal);
        if (visit.Book.Items.FirstOrDefault(known => known.Id == item && known.AreaId == area) is not { } found) return await Uploads.RefuseAsync(context, Notices.NotForYou(context.Request));
        return await uploads.TakeAsync(
            context, visit,
            (form, photo) => books.KeepPhotoAsync(
                context, visit, form,
                () => photos.AddAsync(visit.Book.Id, PhotoDesk.ItemSubject(item), photo, visit.Person.Id, visit.Speech),
                reason => Refused(reason, StatusCodes.Status409Conflict),
                $"walk/{area}/{item}#photos"),
            (_, reason, status) => Refused(reason, status));

        RazorComponentResult Refused(string reason, int status)
        {
            var page = walk.ItemPage(visit, found, [reason], null);
            page.StatusCode = status;
            return page;
        }
    }

    public async Task<IResult> RemoveAsync(string garden, string area, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        if (!visit.Book.Items.Any(known => known.Id == item && known.AreaId == area)) return Notices.NotForYou(context.Request);
        await photos.RemoveAsync(visit.Book.Id, PhotoDesk.ItemSubject(item), form["press"].ToString());
        return GardenDoor.See(context, $"{visit.Here}walk/{area}/{item}#photos");
    }

    /// <summary>
    /// A name is looked up among the notes, so that none of it becomes a path. What it names never changes, so that a browser may keep it
    /// for a day, after which the name itself says that it is the same; not longer, since photos are taken away.
    /// </summary>
    private IResult Show(string garden, string name, HttpContext context, bool thumbnail)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Now, out var visit, out var refusal)) return refusal;
        if (photos.Find(visit.Book.Id, name) is not { } note || !visit.May(RoomOf(note)) || photos.Open(note, thumbnail) is not { } file) return Notices.NotForYou(context.Request);
        context.Response.Headers.CacheControl = "private, max-age=86400";
        return TypedResults.Stream(file, "image/jpeg", entityTag: new($"\"{name}{(thumbnail ? "-small" : "")}\""));
    }

    private static GardenRoom RoomOf(PhotoNote note) => note.Subject.Split('/')[0] switch
    {
        "sketch" => GardenRoom.PlotMap,
        "recheck" => GardenRoom.After,
        _ => GardenRoom.Walk,
    };
}
