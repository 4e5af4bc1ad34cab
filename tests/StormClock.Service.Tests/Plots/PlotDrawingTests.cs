using System.Globalization;
using System.Xml.Linq;
using StormClock.Core.Garden;
using StormClock.Service.Pictures;
using StormClock.Service.Plots;
using StormClock.Service.Tests.Books;

namespace StormClock.Service.Tests.Plots;

public class PlotDrawingTests
{
    private static readonly GardenBook Book = Placed(SampleBook.Read(SampleBook.Good));

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static PlotModel Model(params JobState[] states) => PlotModel.Of(Book, Book.Sites[0], states);

    private static XElement Draw(PlotModel model, PlotLayout layout, PlotSketch? sketch = null) =>
        XElement.Parse(SvgForm.Of(PlotDrawing.Of(model, new(PlotFrame.Of(model, sketch), layout), sketch), "plot", "Plot map of <Home> & more", "All of it.", inPage: false));

    public static TheoryData<string> Layouts => ["narrow", "wide"];

    [Theory, MemberData(nameof(Layouts))]
    public void Drawing_OfASite_HasItsAreasAndItemsWithinItsSize(string name)
    {
        var layout = PlotLayout.All.Single(known => known.Name == name);
        var svg = Draw(Model(), layout);

        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal(["Plot map of <Home> & more", "All of it."], svg.Elements().Take(2).Select(element => element.Value));
        var (width, height) = (Number(svg, "width"), Number(svg, "height"));
        Assert.InRange(width, 200, layout.MostWidthPx);
        Assert.InRange(height, 100, layout.MostDepthPx + 1);
        var texts = svg.Elements(Svg + "text").ToList();
        Assert.Contains(texts, text => text.Value.StartsWith('A'));
        Assert.Contains(texts, text => text.Value == "1");
        Assert.All(texts, text => Assert.True(Number(text, "font-size") >= 12));
        Assert.All(texts, text => Assert.True(Number(text, "x") is >= 0 && Number(text, "x") <= width && Number(text, "y") > 0 && Number(text, "y") <= height));
    }

    /// <summary>The largest grid there may be, and one far longer than wide.</summary>
    [Theory]
    [InlineData(10_000, 10_000)]
    [InlineData(120, 10_000)]
    [InlineData(10_000, 120)]
    public void Drawing_OfAnyGrid_KeepsItsLettersAndStaysWithinBounds(int widthDm, int depthDm)
    {
        foreach (var layout in PlotLayout.All)
        {
            var scale = new PlotScale(new(widthDm, depthDm), layout);
            Assert.True(scale.WidthPx <= layout.MostWidthPx + 1 && scale.DepthPx <= layout.MostDepthPx + 1);
            var drawing = PlotDrawing.Of(Model(), scale, null);
            Assert.InRange(drawing.Marks.Count, 5, 400);
        }
    }

    /// <summary>State by shape: what answers were given, and which shape the item's mark then has. Own choice, no source.</summary>
    public static TheoryData<string, PlotState> Answers => new()
    {
        { "", PlotState.Open },
        { "Done", PlotState.Open },
        { "Done Done", PlotState.Done },
        { "Done Started", PlotState.Open },
        { "Done Cannot", PlotState.Later },
        { "Later Done", PlotState.Later },
        { "Later Open", PlotState.Open },
    };

    [Theory, MemberData(nameof(Answers))]
    public void State_OfAnItemWithTwoJobs_FollowsTheAnswers(string answers, PlotState state)
    {
        var item = Book.Items.First(item => item.Jobs.Count == 2);
        var said = answers.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select((answer, at) => new JobState(item.Jobs[at].Id, Enum.Parse<JobProgress>(answer), Instant.MinValue, "Ines")).ToList();
        var site = Book.SiteOf(Book.AreaOf(item));
        Assert.Equal(state, PlotModel.Of(Book, site, said).Things.Single(thing => thing.Item.Id == item.Id).State);
    }

    [Fact]
    public void State_WithoutWork_IsNothingToDo()
    {
        var book = Book with { Items = [Book.Items[0] with { Jobs = [] }] };
        Assert.Equal(PlotState.Nothing, PlotModel.Of(book, book.Sites[0], []).Things.Single().State);
    }

    /// <summary>No two states look alike where colours cannot be told apart: each has another set of shapes.</summary>
    [Fact]
    public void Marks_OfEachState_DifferInShape()
    {
        var shapes = Enum.GetValues<PlotState>().Select(state => string.Join('|', PlotMarks.Sign("1", state).Marks.Select(mark => mark switch
        {
            Polygon polygon => $"{polygon.Corners.Count} corners, {(polygon.Corners.Any(corner => corner.X == polygon.Corners[0].X && corner.Y != polygon.Corners[0].Y) ? "straight" : "slanted")}, {polygon.Fill}",
            Stroke => "line",
            _ => "number",
        }))).ToList();
        Assert.Equal(4, shapes.Distinct().Count());
        Assert.All(shapes, shape => Assert.EndsWith("number", shape, StringComparison.Ordinal));
    }

    [Fact]
    public void Sketch_BelowTheDrawing_IsPaleAndHasItsOwnMeasure()
    {
        var sketch = new PlotSketch("photo/0", 300, 1600, 1200);
        var svg = Draw(Model(), PlotLayout.Narrow, sketch);
        var image = svg.Elements(Svg + "image").Single();
        Assert.Equal(225, sketch.DepthDm);
        Assert.Equal("photo/0", image.Attribute("href")!.Value);
        Assert.True(Number(image, "opacity") < 0.5);
        Assert.Equal(4.0 / 3, Number(image, "width") / Number(image, "height"), 2);
        Assert.True(svg.Elements().ToList().IndexOf(image) < svg.Elements().ToList().FindIndex(element => element.Name == Svg + "polygon"));
    }

    /// <summary>Where a press is meant, by hand: 12 m over 336 - 34 - 16 px of a phone are 2.38 px a decimetre.</summary>
    [Theory]
    [InlineData(0, 0, null)]
    [InlineData(-1, 30, null)]
    [InlineData(30, -1, null)]
    [InlineData(336, 30, null)]
    [InlineData(99_999, 30, null)]
    [InlineData(int.MaxValue, int.MinValue, null)]
    [InlineData(34, 26, "0 0")]
    [InlineData(1, 1, "0 0")]
    [InlineData(0, 1, "0 0")]
    [InlineData(153, 26, "50 0")]
    [InlineData(34, 145, "0 50")]
    [InlineData(320, 312, "120 120")]
    [InlineData(335, 312, "120 120")]
    public void Press_OnTheDrawing_MeansAPlaceOrNone(int x, int y, string? place) =>
        Assert.Equal(place, new PlotScale(new(120, 120), PlotLayout.Narrow).At(x, y) is { } spot ? $"{spot.XDm} {spot.YDm}" : null);

    /// <summary>Wherever something is drawn, a press there means that place, as closely as a pixel goes.</summary>
    [Fact]
    public void Press_WhereSomethingIsDrawn_MeansThatPlace()
    {
        foreach (var layout in PlotLayout.All)
        {
            for (var dm = 0; dm <= 400; dm += 7)
            {
                var scale = new PlotScale(new(400, 300), layout);
                var y = Math.Min(dm, 300);
                var spot = scale.At((int)Math.Round(scale.X(dm)), (int)Math.Round(scale.Y(y)))!;
                Assert.InRange(Math.Abs(spot.XDm - dm) * scale.PxPerDm, 0, 1);
                Assert.InRange(Math.Abs(spot.YDm - y) * scale.PxPerDm, 0, 1);
            }
        }
    }

    [Theory]
    [InlineData("250x150", true)]
    [InlineData("119x150", false)]
    [InlineData("10001x150", false)]
    [InlineData("-250x150", false)]
    [InlineData("250", false)]
    [InlineData("250x150x1", false)]
    [InlineData("2 50x150", false)]
    [InlineData("99999999999x150", false)]
    [InlineData("", false)]
    public void Frame_AsAFormCarriesIt_IsReadOrNot(string text, bool good)
    {
        var frame = PlotFrame.Parse(text);
        Assert.Equal(good ? text : null, frame?.ToString());
    }

    [Fact]
    public void Frame_OfWhatIsPlaced_HasRoomBeyond()
    {
        var frame = PlotFrame.Of(Model(), null);
        Assert.All(Model().Things.Select(thing => thing.Item.Spot).OfType<PlotSpot>(), spot => Assert.True(spot.XDm < frame.WidthDm && spot.YDm < frame.DepthDm));
        Assert.Equal(new(120, 120), PlotFrame.Of(PlotModel.Of(SampleBook.Read(SampleBook.Good), Book.Sites[0], []), null));
        Assert.True(PlotFrame.Of(Model(), null, room: true).WidthDm > frame.WidthDm);
        Assert.Equal(10_000, PlotFrame.Of(Model(), new("", 10_000, 10, 1600)).DepthDm);
    }

    [Fact]
    public void Letters_OfManyAreas_AreEachTheirOwn()
    {
        var book = Book with { Areas = [.. Enumerable.Range(0, 60).Select(at => new Area($"a{at}", "Area", "home", Exposure.Open))], Items = [] };
        var letters = PlotModel.Of(book, book.Sites[0], []).Places.Select(place => place.Letter).ToList();
        Assert.Equal(60, letters.Distinct().Count());
        Assert.Equal(["A", "Z", "AA", "BH"], [letters[0], letters[25], letters[26], letters[59]]);
    }

    private static GardenBook Placed(GardenBook book) => book with
    {
        Areas = [.. book.Areas.Select(area => area with { Plot = new(10, 10, 100, 40) })],
        Items = [.. book.Items.Select((item, at) => item with { Spot = new(20 + 15 * at, 30) })],
    };

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
