using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;
using StormClock.Service.Desk;
using StormClock.Service.Photos;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>The survey on foot: areas, what stands in them, and what was looked at.</summary>
internal sealed class WalkEndpoints(GardenDoor door, StormStore store, BookDesk books, PhotoDesk photos)
{
    public IResult Areas(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        return GardenDoor.Page<WalkView>(visit, ("Seen", Seen(visit)), ("Faults", Array.Empty<string>()));
    }

    public IResult Area(string garden, string area, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        return visit.Book.Areas.FirstOrDefault(known => known.Id == area) is { } found
            ? AreaPage(visit, found, [], new Dictionary<string, string>(), context.Request.Query["told"].ToString())
            : Notices.NotForYou(context.Request);
    }

    public async Task<IResult> AddAreaAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var name = EntryForm.Line(form["name"].ToString());
        var site = form["site"].ToString() is { Length: > 0 } given ? given : visit.Book.Sites[0].Id;
        if (name.Length == 0 || !Tokens.Exposures.TryGetValue(form["exposure"].ToString(), out var exposure))
            return GardenDoor.Page<WalkView>(visit, ("Seen", Seen(visit)), ("Faults", new[] { visit.Speech.Say("walk.area.nameless") }));

        return await books.DoAsync(context, visit, form, book => BookChange.Put(book, new Area(EntryIds.Of(name, "area"), name, site, exposure), null), () => new(GardenDoor.See(context, $"{visit.Here}walk")),
            faults => GardenDoor.Page<WalkView>(visit, ("Seen", Seen(visit)), ("Faults", faults)), _ => Notices.FormStale(context.Request));
    }

    public async Task<IResult> AddItemAsync(string garden, string area, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        if (visit.Book.Areas.FirstOrDefault(known => known.Id == area) is not { } found) return Notices.NotForYou(context.Request);
        var typed = new Dictionary<string, string> { ["kind"] = EntryForm.Line(form["kind"].ToString()), ["area"] = area, ["count"] = EntryForm.Line(form["count"].ToString()), ["standing"] = EntryForm.Line(form["standing"].ToString()), ["name"] = EntryForm.Line(form["name"].ToString()) };
        if (typed["name"].Length == 0 && ItemKinds.All.TryGetValue(typed["kind"], out var kind)) typed["name"] = Messages.Words.Capital(visit.Speech.Catalogue(kind.Words));
        var id = "";
        return await books.DoAsync(
            context, visit, form,
            book =>
            {
                id = EntryIds.Free(EntryIds.Of(typed["name"], "item"), [.. book.Items.Select(item => item.Id)]);
                var read = ItemForm.Read(book, null, id, typed);
                return read.Value is { } item ? BookChange.Put(book, item, null) : new BookOutcome<Item>.Refused(read.Faults);
            },
            async () =>
            {
                // Of a form that comes again nothing is known but that it was taken.
                if (id.Length > 0) await store.WriteAsync(transaction => WalkMarks.Put(transaction, visit.Book.Id, id, visit.Now));
                return GardenDoor.See(context, $"{visit.Here}walk/{area}?told={id}");
            },
            faults => AreaPage(visit, found, faults, typed, ""),
            _ => Notices.FormStale(context.Request));
    }

    /// <summary>"Still as it was", for one thing or for all of an area.</summary>
    public async Task<IResult> SameAsync(string garden, string area, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var same = visit.Book.Items.Where(item => item.AreaId == area && (form["item"] == "all" || form["item"] == item.Id)).Select(item => item.Id).ToList();
        if (same.Count == 0) return Notices.FormUnread(context.Request);
        await store.WriteAsync(transaction =>
        {
            foreach (var item in same) WalkMarks.Put(transaction, visit.Book.Id, item, visit.Now);
        });
        return GardenDoor.See(context, $"{visit.Here}walk/{area}");
    }

    /// <summary>The walk is done: the book carries its date, and the next one begins with nothing looked at.</summary>
    public async Task<IResult> EndAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var today = visit.Now.InZone(visit.Book.Zone).Date;
        return await books.DoAsync(
            context, visit, form,
            book => BookChange.PutGarden(book, book with { Surveyed = today }, EntryMark.OfGarden(book)),
            async () =>
            {
                await store.WriteAsync(transaction => WalkMarks.EndWalk(transaction, visit.Book.Id, visit.Now));
                return GardenDoor.See(context, $"{visit.Here}walk");
            },
            faults => GardenDoor.Page<WalkView>(visit, ("Seen", Seen(visit)), ("Faults", faults)),
            _ => Notices.FormStale(context.Request));
    }

    public IResult Item(string garden, string area, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        return visit.Book.Items.FirstOrDefault(known => known.Id == item && known.AreaId == area) is { } found ? ItemPage(visit, found, [], null) : Notices.NotForYou(context.Request);
    }

    /// <summary>Takes what was refined, or takes the thing out, as it was shown; shows both versions where somebody changed it meanwhile.</summary>
    public async Task<IResult> ChangeItemAsync(string garden, string area, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var mark = new EntryMark(EntryForm.Line(form["mark"].ToString()));
        var remove = form["press"] == "remove";
        var typed = ItemForm.Fields.Append("name").Append("area").Where(form.ContainsKey).ToDictionary(key => key, key => EntryForm.Line(form[key].ToString()));
        var to = typed.GetValueOrDefault("area", area);
        return await books.DoAsync(
            context, visit, form,
            book => remove ? BookChange.RemoveItem(book, item, mark) : Changed(book, item, typed, mark),
            async () =>
            {
                if (!remove) await store.WriteAsync(transaction => WalkMarks.Put(transaction, visit.Book.Id, item, visit.Now));
                return GardenDoor.See(context, remove ? $"{visit.Here}walk/{area}" : $"{visit.Here}walk/{to}?told={item}");
            },
            faults => visit.Book.Items.FirstOrDefault(known => known.Id == item) is { } shown ? ItemPage(visit, shown, faults, typed, mark) : Notices.NotForYou(context.Request),
            now => now is null
                ? GardenDoor.Page<ConflictView>(visit, ("Name", typed.GetValueOrDefault("name", item)), ("Back", $"{visit.Here}walk/{area}"))
                : ItemPage(visit, now, [], typed, EntryMark.Of(now), conflict: true));
    }

    public async Task<IResult> AddJobAsync(string garden, string area, string item, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Walk, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var job = JobForm.Read(form);
        return await books.DoAsync(
            context, visit, form,
            book => book.Items.FirstOrDefault(known => known.Id == item) is { } found && job is not null
                ? BookChange.Put(book, JobForm.Add(found, job), EntryMark.Of(found))
                : new BookOutcome<Item>.Refused([ReadFault.At(1, visit.Speech.Say("walk.job.unread"))]),
            () => new(GardenDoor.See(context, $"{visit.Here}walk/{area}/{item}")),
            faults => visit.Book.Items.FirstOrDefault(known => known.Id == item) is { } shown ? ItemPage(visit, shown, faults, null) : Notices.NotForYou(context.Request),
            _ => Notices.FormStale(context.Request));
    }

    private static BookOutcome<Item> Changed(GardenBook book, string item, Dictionary<string, string> typed, EntryMark mark)
    {
        if (book.Items.FirstOrDefault(known => known.Id == item) is not { } before) return new BookOutcome<Item>.Conflict(null);
        if (EntryMark.Of(before) != mark) return new BookOutcome<Item>.Conflict(before);
        var read = ItemForm.Read(book, before, item, typed);
        return read.Value is { } changed ? BookChange.Put(book, changed, mark) : new BookOutcome<Item>.Refused(read.Faults);
    }

    private RazorComponentResult<WalkAreaView> AreaPage(GardenVisit visit, Area area, IReadOnlyList<string> faults, IReadOnlyDictionary<string, string> typed, string told) =>
        GardenDoor.Page<WalkAreaView>(visit, ("Area", area), ("Seen", Seen(visit)), ("Faults", faults), ("Typed", typed), ("Told", told));

    /// <summary>Also the answer to a photo of the thing that was not taken.</summary>
    public RazorComponentResult<WalkItemView> ItemPage(GardenVisit visit, Item item, IReadOnlyList<string> faults, IReadOnlyDictionary<string, string>? typed, EntryMark? mark = null, bool conflict = false) =>
        GardenDoor.Page<WalkItemView>(visit, ("Item", item), ("Faults", faults), ("Typed", typed ?? ItemForm.Of(item)), ("Mark", (mark ?? EntryMark.Of(item)).ToString()), ("IsConflict", conflict), ("Photos", photos.Of(visit.Book.Id, PhotoDesk.ItemSubject(item.Id))));

    private IReadOnlyDictionary<string, Instant> Seen(GardenVisit visit) => store.Read(reader => WalkMarks.OfWalk(reader, visit.Book.Id));
}
