using System.Globalization;
using System.Xml.Linq;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Pictures;
using StormClock.Service.Tests.Messages;

namespace StormClock.Service.Tests.Pictures;

public class PlanPictureTests
{
    private const string Ink = "#0b4a31";
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<double> Widths => [360, 900];

    [Theory, MemberData(nameof(Widths))]
    public void PracticeGarden_IsDrawnAsExpected(double width) =>
        Golden.Check(string.Create(CultureInfo.InvariantCulture, $"tern-hook-{width}.expected.svg"), Practice.Svg(width), "Pictures");

    [Fact]
    public void PracticeGarden_IsToldAsExpected() => Golden.Check("tern-hook.expected.txt", Practice.Text, "Pictures");

    [Theory, MemberData(nameof(Widths))]
    public void Picture_OfAnySize_IsAnImageWithTitleAndDescriptionAndNoScriptOrStyle(double width)
    {
        foreach (var picture in Pictures)
        {
            var root = XDocument.Parse(picture.Svg(width)).Root!;
            Assert.Equal("img", root.Attribute("role")!.Value);
            var ids = root.Attribute("aria-labelledby")!.Value.Split(' ');
            Assert.Equal(ids, root.Elements().Take(2).Select(element => element.Attribute("id")!.Value));
            Assert.All(root.Elements().Take(2), element => Assert.NotEqual("", element.Value));
            Assert.DoesNotContain(root.Descendants(), element => element.Name.LocalName is "script" or "style" or "image" or "a" or "foreignObject");
            Assert.DoesNotContain(
                root.DescendantsAndSelf().Attributes(),
                attribute => attribute.Name.LocalName is "style" or "href" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        }
    }

    [Theory, MemberData(nameof(Widths))]
    public void Bars_OfOneLane_NeverOverlap(double width)
    {
        foreach (var picture in Pictures)
        {
            var bars = Rects(picture, width).Where(rect => rect.Fill == Ink);
            var lanes = width < PlanPicture.NarrowBelow
                ? bars.GroupBy(bar => bar.X).Select(lane => lane.Select(bar => (From: bar.Y, To: bar.Y + bar.Height)))
                : bars.GroupBy(bar => bar.Y).Select(lane => lane.Select(bar => (From: bar.X, To: bar.X + bar.Width)));
            foreach (var lane in lanes.Select(lane => lane.Order().ToList()))
            {
                Assert.All(lane.Zip(lane.Skip(1)), pair => Assert.True(pair.First.To <= pair.Second.From + 0.02));
            }
        }
    }

    /// <summary>A job for two has a bar in each lane; one bar more is the key's.</summary>
    [Theory, MemberData(nameof(Widths))]
    public void Bars_OfEveryJobAndPerson_AreThere(double width)
    {
        var plan = InventedPlans.Of(InventedPlans.TernHook);
        Assert.Equal(plan.Jobs.Sum(job => job.People.Count) + 1, Rects(Practice, width).Count(rect => rect.Fill == Ink));
    }

    [Theory, MemberData(nameof(Widths))]
    public void Words_OfEveryJob_StandInTheBarOrTheList(double width)
    {
        var texts = XDocument.Parse(Practice.Svg(width)).Descendants(Svg + "text").Select(text => text.Value).ToList();
        var all = string.Join(' ', texts);
        Assert.All(InventedPlans.TernHook.Items.Where(item => item.Jobs.Count > 0), item => Assert.Contains(item.Name, all, StringComparison.Ordinal));
    }

    [Theory, MemberData(nameof(Widths))]
    public void Everything_StaysWithinThePicture(double width)
    {
        foreach (var picture in Pictures)
        {
            var drawing = picture.Draw(width);
            Assert.Equal(width, drawing.Width);
            Assert.All(drawing.Marks.OfType<Box>(), box => Assert.True(box.X >= 0 && box.X + box.Width <= width + 0.01 && box.Y >= 0 && box.Y + box.Height <= drawing.Height && box.Width >= 0 && box.Height >= 0));
            Assert.All(drawing.Marks.OfType<Label>(), label => Assert.True(
                label.Size >= 11 && label.Y <= drawing.Height && (label.Anchor != Anchor.Start || label.X + Lettering.Width(label.Text, label.Size) <= width + 1), label.Text));
        }
    }

    [Theory, MemberData(nameof(Widths))]
    public void HostileNames_AreEscaped(double width)
    {
        const string name = "<b>\"lemon\" & ]]></title><script>\u0001\uFFFE\u202E";
        var book = InventedPlans.TernHook with
        {
            Name = name,
            People = [.. InventedPlans.TernHook.People.Select(person => person with { Name = name })],
            Items = [.. InventedPlans.TernHook.Items.Select(item => item with { Name = name })],
        };
        var svg = Picture(book).Svg(width);
        Assert.DoesNotContain(XDocument.Parse(svg).Descendants(), element => element.Name.LocalName is "b" or "script");
        Assert.Contains("&lt;b&gt;", svg, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', svg);
    }

    [Fact]
    public void Text_SaysWhatThePictureShows()
    {
        Assert.All(
            InventedPlans.Of(InventedPlans.TernHook).Jobs.Select(job => InventedPlans.TernHook.ItemOf(job.Job).Name),
            name => Assert.Contains(name, Practice.Text, StringComparison.Ordinal));
        Assert.Contains("Ground work could stop as early as", Practice.Text, StringComparison.Ordinal);
        Assert.Contains("light for ground work 07:", Practice.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void EmptyPlan_NamesNoStopAndShowsTheDay()
    {
        var picture = new PlanPicture(new(InventedPlans.TernHook, InventedPlans.Empty, InventedPlans.Now, null, Speeches.Us));
        Assert.Contains("No stop time can be named yet", picture.Text, StringComparison.Ordinal);
        Assert.Contains("Sun 19 Sep", picture.Svg(900), StringComparison.Ordinal);
    }

    [Fact]
    public void LeaveBy_IsShownAndClosesTheGarden()
    {
        var picture = new PlanPicture(new(InventedPlans.TernHook, InventedPlans.Empty, InventedPlans.Now, InventedPlans.Hours(5), Speeches.Us));
        Assert.Contains(">LEAVE BY<", picture.Svg(900), StringComparison.Ordinal);
        Assert.Contains("-closed)", string.Concat(XDocument.Parse(picture.Svg(900)).Descendants(Svg + "rect").Select(rect => rect.Attribute("fill")!.Value)), StringComparison.Ordinal);
        Assert.Contains("Leave by Sun 10:00 EDT", picture.Text, StringComparison.Ordinal);
    }

    /// <summary>A note or an order stops all work at one known time.</summary>
    [Fact]
    public void OneStopForAllWork_IsOneLineAndOneJumpOfTheChance()
    {
        var stops = Enum.GetValues<WorkClass>().ToDictionary(work => work, _ => new WorkStop(InventedPlans.Hours(9), InventedPlans.Hours(9)));
        var svg = new PlanPicture(new(InventedPlans.TernHook, InventedPlans.Empty with { WorkStops = stops }, InventedPlans.Now, null, Speeches.Us)).Svg(900);
        Assert.Equal(2, svg.Split("all work could stop").Length);
        Assert.DoesNotContain("more likely<", svg, StringComparison.Ordinal);
        Assert.Contains(">under 10 %<", svg, StringComparison.Ordinal);
        Assert.Contains(">over 50 %<", svg, StringComparison.Ordinal);
    }

    /// <summary>
    /// By hand at 30.08 N, 84.16 W: noon 12:00 + 1 h + (84.16 − 75) · 4 min − 6 min (equation of time) = 13:30; half the day
    /// 6 h 7 min, so sunrise 07:23 and sunset 19:37; civil twilight 24 min. Margins: + 15 min, − 30 min (science.md 7).
    /// </summary>
    [Fact]
    public void Light_IsThatOfTheFirstSite() =>
        Assert.Matches("Sun 19 Sep: light for ground work 07:1[2-6] to 19:(29|3[0-3]), for all other work 07:2[1-5] to 19:0[5-9]", Practice.Text);

    /// <summary>
    /// At 60.1 N, 149.4 W with clocks 8 h behind UTC the sun's midnight of 21 June is 12 h after 12:00 + (149.4 − 120) · 4 min + 2 min,
    /// near 02:00; it is then 90 − 60.1 − 23.4 = 6.5° below the horizon. So civil dusk and dawn lie on either side of 02:00.
    /// </summary>
    [Fact]
    public void Light_ThatEndsAfterMidnight_IsShownOnBothDates()
    {
        var book = InventedPlans.TernHook with
        {
            Zone = DateTimeZoneProviders.Tzdb["America/Anchorage"],
            Sites = [InventedPlans.TernHook.Sites[0] with { At = new(60.1, -149.4) }],
        };
        var text = new PlanPicture(new(book, InventedPlans.Empty, Instant.FromUtc(2027, 6, 21, 20, 0), null, Speeches.Us)).Text;
        Assert.Matches("Mon 21 Jun: light for ground work 00:00 to 0[01]:[0-5][0-9] and 0[23]:[0-5][0-9] to 24:00, for all other work 04:[0-5][0-9] to 2[23]:[0-5][0-9]", text);
    }

    [Fact]
    public void WithoutWork_NamesNobodyAndNoJob()
    {
        var picture = new PlanPicture(new PictureSubject(InventedPlans.TernHook, InventedPlans.Of(InventedPlans.TernHook), InventedPlans.Now, null, Speeches.Us).WithoutWork);
        foreach (var shown in new[] { picture.Svg(900), picture.Svg(336), picture.Text })
        {
            Assert.DoesNotContain("Delphine", shown, StringComparison.Ordinal);
            Assert.DoesNotContain("Satsumas", shown, StringComparison.Ordinal);
            Assert.Contains("ground", shown, StringComparison.OrdinalIgnoreCase);
        }
    }

    private static GardenBook Crowd => InventedPlans.TernHook with
    {
        People = [.. Enumerable.Range(1, 9).Select(at => InventedPlans.TernHook.People[0] with { Id = $"helper-{at}", Name = $"Helper with a long name {at}" })],
    };

    private static PlanPicture Practice => Picture(InventedPlans.TernHook);

    private static IEnumerable<PlanPicture> Pictures =>
    [
        Practice, Picture(InventedPlans.SaltbushCourt), Picture(InventedPlans.Long(200)), Picture(Crowd),
        new(new(InventedPlans.TernHook, InventedPlans.Empty, InventedPlans.Now, null, Speeches.Us)),
    ];

    private static PlanPicture Picture(GardenBook book) => new(new(book, InventedPlans.Of(book), InventedPlans.Now, null, Speeches.Us));

    private static IEnumerable<(double X, double Y, double Width, double Height, string Fill)> Rects(PlanPicture picture, double width) =>
        XDocument.Parse(picture.Svg(width)).Descendants(Svg + "rect").Where(rect => rect.Attribute("x") is not null).Select(rect =>
            (Number(rect, "x"), Number(rect, "y"), Number(rect, "width"), Number(rect, "height"), rect.Attribute("fill")!.Value));

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
