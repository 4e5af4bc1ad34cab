using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Csv;
using StormClock.Service.Books.Edits;

namespace StormClock.Service.Tests.Books;

/// <summary>Where areas and items lie on the gardener's own drawing. The bounds are agreed (C): no source.</summary>
public class PlotReaderTests
{
    private const string Area = "{id: porch, name: Porch, site: home, exposure: sheltered}";

    private static string With(string plot, string spot) => SampleBook.Good
        .Replace(Area, $"{Area[..^1]}, plot: {plot}}}", StringComparison.Ordinal)
        .Replace("    count: 3\n", $"    count: 3\n    spot: {spot}\n", StringComparison.Ordinal);

    public static TheoryData<string, PlotRect> Plots => new()
    {
        { "[2, 0.5, 4, 3]", new(20, 5, 40, 30) },
        { "[0, 0, 0.1, 0.1]", new(0, 0, 1, 1) },
        { "[0, 0, 1000, 1000]", new(0, 0, 10_000, 10_000) },
        { "[999.9, 12.3, .1, 1e1]", new(9999, 123, 1, 100) },
        { "['2.0', +3, 4.00, 5]", new(20, 30, 40, 50) },
    };

    [Theory, MemberData(nameof(Plots))]
    public void Read_PlotOfAnArea_IsInWholeDecimetres(string written, PlotRect plot)
    {
        var book = SampleBook.Read(With(written, "[7.3, 0]"));
        Assert.Equal(plot, book.Areas[0].Plot);
        Assert.Equal(new PlotSpot(73, 0), book.Items[0].Spot);
        Assert.Null(book.Areas[1].Plot);
        Assert.Null(book.Items[1].Spot);
    }

    public static TheoryData<string, string[]> BadPlots => new()
    {
        { "[2, 0.5, 4]", ["4 numbers in metres, left, top, width, depth", "plot: [2, 0.5, 4, 3]"] },
        { "[2, 0,5, 4, 3]", ["4 numbers", "a point before decimals"] },
        { "[]", ["4 numbers"] },
        { "12", ["4 numbers"] },
        { "{left: 2}", ["4 numbers"] },
        { "[[1], 2, 3, 4]", ["4 numbers"] },
        { "[2, 0.55, 4, 3]", ["'0.55' for top", "in steps of 0.1"] },
        { "[-0.1, 0, 4, 3]", ["'-0.1' for left", "from 0 to 1000"] },
        { "[0, 1000.1, 4, 3]", ["'1000.1' for top"] },
        { "[0, 0, 4 m, 3]", ["'4 m' for width"] },
        { "[0, 0, NaN, 3]", ["'NaN' for width"] },
        { "[0, 0, 1e400, 3]", ["'1e400' for width"] },
        { "[0, 0, wide, 3]", ["'wide' for width"] },
        { "[0, 0, 0, 3]", ["has no width or no depth"] },
        { "[0, 0, 3, 0]", ["has no width or no depth"] },
        { "[999, 0, 1.1, 3]", ["reaches past 1000 m"] },
        { "[0, 600, 1, 400.1]", ["reaches past 1000 m"] },
    };

    [Theory, MemberData(nameof(BadPlots))]
    public void Read_PlotThatCannotBe_IsRefusedWithItsLineAndTheMend(string written, string[] told)
    {
        var read = GardenReader.Read(With(written, "[1, 1]"), "quay.yaml");
        var fault = Assert.Single(read.Faults);
        Assert.Equal(16, fault.Line);
        Assert.StartsWith("'plot' of area 'porch'", fault.Reason, StringComparison.Ordinal);
        Assert.All(told, words => Assert.Contains(words, fault.Reason, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[1]", "2 numbers in metres, x, y")]
    [InlineData("[1, 2, 3]", "2 numbers in metres, x, y")]
    [InlineData("[1, 1000.1]", "'1000.1' for y")]
    [InlineData("[a, 1]", "'a' for x")]
    [InlineData("[1.25, 1]", "in steps of 0.1")]
    public void Read_SpotThatCannotBe_IsRefused(string written, string told)
    {
        var fault = Assert.Single(GardenReader.Read(With("[1, 1, 1, 1]", written), "quay.yaml").Faults);
        Assert.StartsWith("'spot' of item 'fig-pots'", fault.Reason, StringComparison.Ordinal);
        Assert.Contains(told, fault.Reason, StringComparison.Ordinal);
    }

    /// <summary>All that is wrong comes in one run.</summary>
    [Fact]
    public void Read_SeveralFaults_AreAllNamed() =>
        Assert.Equal(4, GardenReader.Read(With("[-1, x, 2000, 3]", "[1, -1]"), "quay.yaml").Faults.Count);

    [Fact]
    public void Write_WithPlaces_ReadsBackTheSame()
    {
        var book = SampleBook.Read(With("[999.9, 12.3, 0.1, 10]", "[7.3, 0]"));
        var text = GardenWriter.Write(book);
        Assert.Contains("plot: [999.9, 12.3, 0.1, 10]", text, StringComparison.Ordinal);
        Assert.Contains("spot: [7.3, 0]", text, StringComparison.Ordinal);
        var again = SampleBook.Read(text);
        Assert.Equal((book.Areas[0].Plot, book.Items[0].Spot), (again.Areas[0].Plot, again.Items[0].Spot));
    }

    [Fact]
    public void Write_WithoutPlaces_HasNoWordOfThem()
    {
        var text = GardenWriter.Write(SampleBook.Read(SampleBook.Good));
        Assert.DoesNotContain("plot:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("spot:", text, StringComparison.Ordinal);
    }

    /// <summary>A remark, another unit, the order of keys: all of it stays where one place is put into a file or taken out.</summary>
    [Fact]
    public void Rewrite_PlacedAndTakenOff_LeavesTheRestOfTheFile()
    {
        var text = SampleBook.Good.Replace("    count: 3\n", "    count: 3 # by the door\n", StringComparison.Ordinal);
        var book = GardenReader.Read(text, "quay.yaml").Value!;
        var placed = book with
        {
            Areas = [book.Areas[0] with { Plot = new(20, 5, 40, 30) }, .. book.Areas.Skip(1)],
            Items = [book.Items[0] with { Spot = new(25, 10) }, .. book.Items.Skip(1)],
        };
        var put = Assert.IsType<BookRewrite.Kept>(BookText.Rewrite(text, "quay.yaml", book, placed).Value);
        Assert.Equal(text.Replace(Area, $"{Area[..^1]}, plot: [2, 0.5, 4, 3]}}", StringComparison.Ordinal), string.Join('\n', put.Text.Split('\n').Where(line => !line.Contains("spot: [2.5, 1]", StringComparison.Ordinal))));

        var off = Assert.IsType<BookRewrite.Kept>(BookText.Rewrite(put.Text, "quay.yaml", put.Book, book).Value);
        Assert.Equal(text, off.Text);
    }

    [Fact]
    public void Mark_OfAnEntry_ChangesWithItsPlace()
    {
        var book = SampleBook.Read(SampleBook.Good);
        Assert.NotEqual(EntryMark.Of(book.Areas[0]), EntryMark.Of(book.Areas[0] with { Plot = new(0, 0, 1, 1) }));
        Assert.NotEqual(EntryMark.Of(book.Items[0]), EntryMark.Of(book.Items[0] with { Spot = new(0, 0) }));
    }

    [Fact]
    public void Table_WithSpots_ReadsBackTheSame()
    {
        var book = SampleBook.Read(With("[0, 0, 5, 5]", "[7.3, 0.2]"));
        var table = ItemTableWriter.Write(book);
        Assert.Contains("7.3 0.2", table, StringComparison.Ordinal);
        var again = InTable(table);
        Assert.True(again.IsGood, string.Join('\n', again.Faults));
        Assert.Equal(new PlotSpot(73, 2), again.Value!.Items.Single(item => item.Id == "fig-pots").Spot);
    }

    [Fact]
    public void Table_SpotThatCannotBe_IsNamedWithTheTablesLine()
    {
        var fault = Assert.Single(InTable("id,kind,area,count,spot\r\nfigs,potted_tree,porch,2,1 x\r\n").Faults);
        Assert.Equal(("plants.csv", 2), (fault.File, fault.Line));
        Assert.Contains("'x' for y", fault.Reason, StringComparison.Ordinal);
    }

    private static ReadResult<GardenBook> InTable(string table)
    {
        var text = SampleBook.Good[..SampleBook.Good.IndexOf("items:", StringComparison.Ordinal)] + "items_file: plants.csv\n";
        return GardenReader.Read(text, "quay.yaml", _ => ReadResult.Good(table));
    }
}
