using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;
using StormClock.Service.Pictures;
using StormClock.Service.Sheets;
using StormClock.Service.Tests.Pictures;
using UglyToad.PdfPig;

namespace StormClock.Service.Tests.Sheets;

public class PlanSheetTests
{
    private static readonly Instant Now = InventedPlans.Now;

    public static TheoryData<string> Gardens => ["tern-hook", "saltbush-court"];

    [Theory, MemberData(nameof(Gardens))]
    public void PracticeGarden_FitsTwoPagesAndNamesEveryJob(string garden)
    {
        var book = garden == "tern-hook" ? InventedPlans.TernHook : InventedPlans.SaltbushCourt;
        using var sheet = Open(book, InventedPlans.Of(book));
        Assert.InRange(sheet.NumberOfPages, 1, 2);
        var text = Text(sheet);
        Assert.All(book.Items.Where(item => item.Jobs.Count > 0), item => Assert.Contains(Squeezed(item.Name), text, StringComparison.Ordinal));
        Assert.All(book.People, person => Assert.Contains(Squeezed(person.Name), text, StringComparison.Ordinal));
    }

    /// <summary>Letters carry sheets, and what is written again after a crash must be the same.</summary>
    [Fact]
    public void Bytes_SamePlan_AreTheSameAndOfAnotherMinuteOthers()
    {
        var decision = Decided(InventedPlans.Of(InventedPlans.TernHook), Stage.MainWork);
        var first = PlanSheet.Of(InventedPlans.TernHook, decision, Now, Speeches.Us);
        Assert.Equal(first, PlanSheet.Of(InventedPlans.TernHook, decision, Now, Speeches.Us));
        Assert.NotEqual(first, PlanSheet.Of(InventedPlans.TernHook, decision, Now + Duration.FromMinutes(1), Speeches.Us));
    }

    /// <summary>Words, accents and an inverted question mark are in the font that is carried along.</summary>
    [Fact]
    public void Words_InSpanish_ArePrintedWithTheirAccents()
    {
        var book = InventedPlans.TernHook;
        using var sheet = PdfDocument.Open(PlanSheet.Of(book, Decided(InventedPlans.Of(book), Stage.MainWork), Now, Speeches.Spanish));
        var text = Text(sheet);
        Assert.All(
            (string[])["Plan de tormenta para", "Horas de parar", "Trabajo en escalera", "ráfagas", "Después: mire primero", "Página 1 de", "según THESSALY, advertencia n.º 1", "p.m."],
            words => Assert.Contains(Squeezed(words), text, StringComparison.Ordinal));
        Assert.DoesNotContain('\uFFFD', text);
    }

    /// <summary>US letter 612 by 792 points, A4 595 by 842.</summary>
    [Theory]
    [InlineData("tern-hook", 612, 792)]
    [InlineData("saltbush-court", 595, 842)]
    public void Paper_FollowsTheBooksUnits(string garden, double width, double height)
    {
        var book = garden == "tern-hook" ? InventedPlans.TernHook : InventedPlans.SaltbushCourt;
        using var sheet = Open(book, InventedPlans.Of(book));
        Assert.All(sheet.GetPages(), page => Assert.Equal((width, height), (Math.Round(page.Width), Math.Round(page.Height))));
    }

    [Fact]
    public void Letters_AreLargeEnoughAndInTheSheetsOwnFont()
    {
        using var sheet = Open(InventedPlans.TernHook, InventedPlans.Of(InventedPlans.TernHook));
        Assert.All(sheet.GetPages().SelectMany(page => page.Letters), letter =>
        {
            Assert.True(letter.PointSize > 7, $"{letter.Value} at {letter.PointSize} pt");
            Assert.Contains("DejaVu", letter.FontName, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void FirstPage_SaysOrdersThenStopTimesBeforeAllWork()
    {
        using var sheet = Open(InventedPlans.TernHook, InventedPlans.Of(InventedPlans.TernHook));
        var text = Text(sheet);
        int[] places =
        [
            At("Official orders come before everything here"), At("Ladder work, at 16 mph sustained or 22 mph gust: stop by Tue 18:00 EDT"),
            At("Ground work, at 34 mph sustained"), At("House lot, Porch and steps"),
        ];
        Assert.Equal(places.Order(), places);
        Assert.DoesNotContain(-1, places);

        int At(string words) => text.IndexOf(Squeezed(words), StringComparison.Ordinal);
    }

    [Fact]
    public void EveryPage_SaysItsNumberAndFromWhatItWasMade()
    {
        using var sheet = Open(InventedPlans.Long(200), InventedPlans.Of(InventedPlans.Long(200)));
        Assert.True(sheet.NumberOfPages > 2);
        Assert.All(sheet.GetPages(), page =>
        {
            var text = Squeezed(page.Text);
            Assert.Contains($"Page{page.Number}of{sheet.NumberOfPages}", text, StringComparison.Ordinal);
            Assert.Contains("MadeSun05:00EDT(19Sep2027)fromTHESSALYadvisory1", text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void LeftOutShoppingAndStores_AreListed()
    {
        var book = InventedPlans.TernHook;
        var lost = book.Jobs.First(job => job.Fallback is not null);
        var plan = InventedPlans.Of(book) with
        {
            LeftOut = [new(lost, LeftCause.NoTime, lost.Fallback)],
            Buy = [new("ground anchor", 8, 6, 2, "each")],
            Stores = [new("garage", 6.2, -0.7, 5.2, 2.8)],
        };
        using var sheet = Open(book, plan);
        var text = Text(sheet);
        Assert.All(
            (string[])["No time left before this work must stop: ", $"(instead: {lost.Fallback})", "ground anchor: 2 (need 8, have 6)", "Garage: floor 67 sq ft of 59 sq ft", "More than it holds", "Notes"],
            words => Assert.Contains(Squeezed(words), text, StringComparison.Ordinal));
    }

    [Fact]
    public void Sheet_NeverSaysThatItIsSafe()
    {
        using var sheet = Open(InventedPlans.TernHook, InventedPlans.Of(InventedPlans.TernHook));
        var text = Text(sheet).Replace(Squeezed("Nothing here says that it is safe to work, to stay or to go back."), "", StringComparison.Ordinal);
        Assert.DoesNotContain("safe", text, StringComparison.OrdinalIgnoreCase);
    }

    public static TheoryData<bool, Stage> Endings => new() { { true, Stage.MainWork }, { false, Stage.GardenClosed } };

    [Theory, MemberData(nameof(Endings))]
    public void WorkIsOver_ShowsNoJob(bool leave, Stage stage)
    {
        var book = InventedPlans.TernHook;
        var decision = Decided(InventedPlans.Of(book), stage) with { LeaveBy = leave ? Now : null };
        var content = SheetWriter.Write(book, decision, Now, Speeches.Us);
        Assert.Empty(content.Places);
        Assert.Null(content.Picture);
        Assert.Equal(leave, content.Lead[0].StartsWith("LEAVE NOW", StringComparison.Ordinal));
        using var sheet = PdfDocument.Open(PlanSheet.Of(book, decision, Now, Speeches.Us));
        Assert.Equal(1, sheet.NumberOfPages);
    }

    [Fact]
    public void NoPlan_StillSaysOrdersAndWhatToLookAtAfterwards()
    {
        using var sheet = PdfDocument.Open(PlanSheet.Of(InventedPlans.TernHook, Decided(null, Stage.NothingDue), Now, Speeches.Us));
        Assert.Contains(Squeezed("No garden work is planned. Go by the official word."), Text(sheet), StringComparison.Ordinal);
        Assert.Contains(Squeezed("After: look first at"), Text(sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void StrangeNames_AreSetAsTheyStandAndBreakNothing()
    {
        const string name = "<b>lemon</b> \u0001\u202E 柿の木 \U0001F34B \uD800";
        var book = InventedPlans.TernHook with { Name = name, Items = [.. InventedPlans.TernHook.Items.Select(item => item with { Name = name })] };
        using var sheet = Open(book, InventedPlans.Of(book));
        Assert.Contains("<b>lemon</b>", Text(sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void LongBook_CutsNoJobInTwoAndKeepsThePaper()
    {
        var book = InventedPlans.Long(200);
        var plan = InventedPlans.Of(book) with { LeftOut = [.. book.Jobs.Select(job => new LeftOutJob(job, new(LeftCause.TooFewPeople) { People = 2 }, job.Fallback))] };
        var content = SheetWriter.Write(book, Decided(plan, Stage.MainWork), Now, Speeches.Us);
        var pages = SheetLayout.Pages(content, (text, size, _) => text.Length * size * 0.5);
        var lastLine = content.Places.SelectMany(place => place.Jobs).ToDictionary(job => $"{job.Number}", job => job.Details[^1]);
        Assert.Equal(200, lastLine.Count);
        Assert.Equal(200, pages.Sum(page => Numbers(page).Count()));
        foreach (var page in pages)
        {
            var labels = page.Marks.OfType<Label>().ToList();
            Assert.All(Numbers(page), number => Assert.Contains(labels, label => label.Text == lastLine[number.Text]));
            Assert.All(labels, label => Assert.True(label.Y <= page.Height - 20 && label.X >= 0 && label.X < page.Width, label.Text));
        }

        static IEnumerable<Label> Numbers(Drawing page) => page.Marks.OfType<Label>().Where(label => label is { Bold: true, Anchor: Anchor.End, Size: 8.2 });
    }

    [Fact]
    public void Place_ThatGoesOnInAnotherColumn_IsNamedThereAgain()
    {
        var book = InventedPlans.Long(200);
        var content = SheetWriter.Write(book, Decided(InventedPlans.Of(book), Stage.MainWork), Now, Speeches.Us);
        var pages = SheetLayout.Pages(content, (text, size, _) => text.Length * size * 0.5);
        Assert.True(pages.Count > 2, $"{pages.Count} pages");
        Assert.All(pages.Skip(1).SkipLast(1), page =>
        {
            var first = page.Marks.OfType<Label>().First().Text;
            Assert.Contains(content.Places.Select(place => place.Name).Concat(content.Lists.Select(list => list.Heading)), heading => heading == first);
        });
    }

    [Fact]
    public void Thing_WhoseKindIsToBewareOf_SaysSoBesideItsWork()
    {
        var book = InventedPlans.TernHook;
        var plan = InventedPlans.Of(book);
        var content = SheetWriter.Write(book, Decided(plan, Stage.MainWork), Now, Speeches.Us);
        var cautions = plan.Jobs.Select(job => book.ItemOf(job.Job).Caution).OfType<string>().Distinct().ToList();
        Assert.NotEmpty(cautions);
        Assert.All(cautions, caution => Assert.Contains(content.Places.SelectMany(place => place.Jobs).SelectMany(job => job.Details), line => line.Contains(caution, StringComparison.Ordinal)));
    }

    [Fact]
    public void Text_ThatDoesNotFit_Wraps()
    {
        var type = new SheetType((text, size, _) => text.Length * size * 0.5);
        var lines = type.Wrap($"Ada's {new string('x', 120)} and more of it", 8, false, 100);
        Assert.All(lines, line => Assert.True(line.Length * 4 <= 100, line));
        Assert.Equal($"Ada's{new string('x', 120)}andmoreofit", Squeezed(string.Concat(lines)));
    }

    private static PdfDocument Open(GardenBook book, GardenPlan plan) => PdfDocument.Open(PlanSheet.Of(book, Decided(plan, Stage.MainWork), Now, Speeches.Us));

    private static Decision Decided(GardenPlan? plan, Stage stage)
    {
        var calm = GardenStanding.Calm(Now);
        var reason = new StageReason(StageCause.Chance, "THESSALY advisory 1", Now - Duration.FromHours(1), 0.6);
        return new(calm with { Stage = calm.Stage with { Stage = stage, Reason = reason } }, plan, null, OfficialOrder.None, [], "", null);
    }

    private static string Text(PdfDocument sheet) => Squeezed(string.Concat(sheet.GetPages().Select(page => page.Text)));

    /// <summary>Without blanks, since lines are broken at them.</summary>
    private static string Squeezed(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
}
