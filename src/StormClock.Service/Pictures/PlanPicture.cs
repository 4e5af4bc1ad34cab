namespace StormClock.Service.Pictures;

/// <summary>
/// A time line of the plan: daylight, when each class of work could stop, how likely ground work has stopped, who does what when.
/// The same plan gives the same picture; the text says what the picture shows.
/// </summary>
public sealed class PlanPicture(PictureSubject subject)
{
    /// <summary>Narrower than this time runs down the page.</summary>
    public const double NarrowBelow = 600;

    private readonly PictureModel model = new(subject);

    /// <summary>The equal of the picture in plain text, a line each.</summary>
    public string Text => PictureText.Of(model);

    /// <summary>A file of its own.</summary>
    public string Svg(double width) => SvgForm.Of(Draw(width), "plan", model.Title, PictureText.Summary(model), inPage: false);

    /// <summary>To stand within a page.</summary>
    /// <param name="id">Unique on the page; letters, digits, hyphens.</param>
    public string SvgInPage(double width, string id) => SvgForm.Of(Draw(width), id, model.Title, PictureText.Summary(model), inPage: true);

    /// <summary>For a sheet, whose own list names the jobs under the same numbers.</summary>
    internal Drawing ForSheet(double width) => new WideLayout(model, width).DrawBrief();

    internal Drawing Draw(double width) => width < NarrowBelow ? new NarrowLayout(model, width).Draw() : new WideLayout(model, width).Draw();
}
