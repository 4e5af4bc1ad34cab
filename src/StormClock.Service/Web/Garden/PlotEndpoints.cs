using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;
using StormClock.Service.Desk;
using StormClock.Service.Photos;
using StormClock.Service.Pictures;
using StormClock.Service.Plots;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>The plot map: the gardener's own drawing of each site, and placing areas and items on it.</summary>
internal sealed class PlotEndpoints(GardenDoor door, StormStore store, BookDesk books, PhotoDesk photos, Uploads uploads)
{
    /// <param name="garden">Its id.</param>
    /// <param name="context">May name the site, what is to be placed, which corner of it a press gives, and that it was placed just now.</param>
    public IResult Show(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.PlotMap, out var visit, out var refusal)) return refusal;
        var query = context.Request.Query;
        var pick = PlotPick.Find(visit.Book, query["place"].ToString());
        if (pick is null && query.ContainsKey("place")) return Notices.NotForYou(context.Request);
        return SiteOf(visit, pick, query["site"].ToString()) is { } site
            ? Page(visit, site, new() { Pick = pick, Far = query["corner"] == PlotForm.Far && pick?.Plot is not null, Told = query.ContainsKey("told") })
            : Notices.NotForYou(context.Request);
    }

    /// <summary>The drawing by itself, to be pressed on. It is see-through: the sketch, which an image could not fetch, lies below it on the page.</summary>
    public IResult Svg(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.PlotMap, out var visit, out var refusal)) return refusal;
        var query = context.Request.Query;
        var pick = PlotPick.Find(visit.Book, query["place"].ToString());
        if (SiteOf(visit, pick, query["site"].ToString()) is not { } site || PlotFrame.Parse(query["frame"].ToString()) is not { } frame
            || PlotLayout.All.FirstOrDefault(layout => layout.Name == query["layout"]) is not { } layout) return Notices.NotForYou(context.Request);

        var model = Model(visit, site);
        var drawing = PlotDrawing.Of(model, new(frame, layout), sketch: null, pick is null ? null : (pick.IsArea, pick.Id));
        return TypedResults.Text(SvgForm.Of(drawing, "plot", PlotWords.Title(model, visit.Speech), PlotWords.Description(model, visit.Speech), inPage: false, onPaper: false), "image/svg+xml; charset=utf-8");
    }

    /// <summary>Places something by a press on the drawing, by its metres, or by a step; or takes it off the drawing.</summary>
    public async Task<IResult> PlaceAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.PlotMap, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        var (token, mark, far) = (form["place"].ToString(), new EntryMark(form["mark"].ToString()), form["corner"] == PlotForm.Far);
        if (SiteOf(visit, PlotPick.Find(visit.Book, token), form["site"].ToString()) is not { } site) return Notices.FormUnread(context.Request);

        return await books.DoAsync(
            context, visit, form,
            book => Placed(book, token, mark, form, visit),
            () => new(GardenDoor.See(context, $"{visit.Here}plot-map?site={site.Id}{After(form, token, far)}&told=1")),
            faults => Page(visit, site, new() { Pick = PlotPick.Find(visit.Book, token), Far = far, Faults = faults, Typed = Typed(form), Mark = mark }),
            now => Page(door.Again(visit), site, new() { Pick = now, Far = far && now?.Plot is not null, Conflict = now is null ? "walk.gone" : "plot.conflict", Typed = now is null ? null : Typed(form) }));
    }

    public async Task<IResult> PutSketchAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.PlotMap, out var visit, out var refusal)) return await Uploads.RefuseAsync(context, refusal);
        return await uploads.TakeAsync(
            context, visit,
            async (form, photo) =>
            {
                if (SiteOf(visit, null, form["site"].ToString()) is not { } site) return Notices.FormUnread(context.Request);
                if (Width(form) is not { } widthDm) return Refused(form, WidthFault(visit, form), StatusCodes.Status400BadRequest);
                return await books.KeepPhotoAsync(
                    context, visit, form,
                    () => photos.PutSketchAsync(visit.Book.Id, site.Id, photo, widthDm, visit.Person.Id, visit.Speech),
                    reason => Refused(form, reason, StatusCodes.Status409Conflict),
                    $"plot-map?site={site.Id}");
            },
            Refused);

        IResult Refused(IFormCollection? form, string reason, int status) =>
            Page(visit, SiteOf(visit, null, form?["site"].ToString() ?? "") ?? visit.Book.Sites[0], new() { Faults = [reason], Width = form?["width"].ToString(), Status = status });
    }

    /// <summary>Says anew how much ground the sketch shows, or takes it away.</summary>
    public async Task<IResult> ChangeSketchAsync(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.PlotMap, out var visit, out var refusal)) return refusal;
        var (form, unread) = await door.ReadAsync(context);
        if (form is null) return unread!;
        if (SiteOf(visit, null, form["site"].ToString()) is not { } site) return Notices.FormUnread(context.Request);
        if (form["press"] == "away")
        {
            var subject = PhotoDesk.SketchSubject(site.Id);
            foreach (var note in photos.Of(visit.Book.Id, subject)) await photos.RemoveAsync(visit.Book.Id, subject, note.FileName);
        }
        else if (Width(form) is { } widthDm) await store.WriteAsync(transaction => SketchWidths.Put(transaction, visit.Book.Id, site.Id, widthDm));
        else return Page(visit, site, new() { Faults = [WidthFault(visit, form)], Width = form["width"].ToString() });

        return GardenDoor.See(context, $"{visit.Here}plot-map?site={site.Id}");
    }

    private static BookOutcome<PlotPick> Placed(GardenBook book, string token, EntryMark mark, IFormCollection form, GardenVisit visit)
    {
        if (PlotPick.Find(book, token) is not { } pick) return new BookOutcome<PlotPick>.Conflict(null);
        if (pick.Mark != mark) return new BookOutcome<PlotPick>.Conflict(pick);
        var wish = PlotForm.Read(form, pick, visit.Speech);
        return wish.Value is { } good ? pick.Put(book, good) : new BookOutcome<PlotPick>.Refused(wish.Faults);
    }

    /// <summary>After the near corner of an area comes the far one; whatever was taken off the drawing is not asked for again.</summary>
    private static string After(IFormCollection form, string token, bool far)
    {
        if (form["press"] == "off") return "";
        return $"&place={token}{(PlotForm.Pressed(form) is not null && !far && token.StartsWith("area/", StringComparison.Ordinal) ? $"&corner={PlotForm.Far}" : "")}";
    }

    private static Dictionary<string, string>? Typed(IFormCollection form) =>
        form["press"] == "fields" ? form.Where(field => field.Key.Length < 10).ToDictionary(field => field.Key, field => EntryForm.Line(field.Value.ToString())) : null;

    private static int? Width(IFormCollection form) => PlotText.Decimetres(form["width"].ToString().Trim()) is { } dm and > 0 ? dm : null;

    private static string WidthFault(GardenVisit visit, IFormCollection form) =>
        visit.Speech.Say("plot.fault.number", ("field", visit.Speech.Say("plot.sketch.width")), ("typed", YamlFields.Shown(form["width"].ToString())), ("most", PlotText.MostM));

    /// <summary>Of what is placed, or by its id, or the first; null for an id that no site has.</summary>
    private static Site? SiteOf(GardenVisit visit, PlotPick? pick, string id)
    {
        if (pick is not null) return visit.Book.SiteOf(pick.Area);
        return id.Length == 0 ? visit.Book.Sites[0] : visit.Book.Sites.FirstOrDefault(site => site.Id == id);
    }

    private Microsoft.AspNetCore.Http.HttpResults.RazorComponentResult<PlotMapView> Page(GardenVisit visit, Site site, PlotAsk ask)
    {
        var (model, sketch) = (Model(visit, site), SketchOf(visit, site));
        var page = GardenDoor.Page<PlotMapView>(visit, ("Model", model), ("Sketch", sketch is { } found ? new PlotSketch($"{visit.Here}photo/{found.Note.FileName}", found.WidthDm, found.Note.WidthPx, found.Note.HeightPx) : null), ("Ask", ask));
        page.StatusCode = ask.Status;
        return page;
    }

    private PlotModel Model(GardenVisit visit, Site site) =>
        PlotModel.Of(visit.Book, site, visit.Stage.EpisodeId is { } episode ? store.Read(reader => JobStates.OfEpisode(reader, visit.Book.Id, episode)) : []);

    private (PhotoNote Note, int WidthDm)? SketchOf(GardenVisit visit, Site site) =>
        photos.Of(visit.Book.Id, PhotoDesk.SketchSubject(site.Id)) is [.., var note] && store.Read(reader => SketchWidths.Find(reader, visit.Book.Id, site.Id)) is { } width ? (note, width) : null;
}
