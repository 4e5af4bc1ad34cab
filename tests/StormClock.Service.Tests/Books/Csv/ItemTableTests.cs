using CsCheck;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Csv;

namespace StormClock.Service.Tests.Books.Csv;

/// <summary>Items in a table beside the book.</summary>
public class ItemTableTests
{
    private static readonly string WithTable = SampleBook.Good + "\nitems_file: plants.csv\n";

    internal static readonly string OnlyTable = SampleBook.Good[..SampleBook.Good.IndexOf("items:", StringComparison.Ordinal)] + "items_file: plants.csv\n";

    private static ReadResult<GardenBook> Read(string table, string? book = null) =>
        GardenReader.Read(book ?? OnlyTable, "quay.yaml", name => name == "plants.csv" ? table : ReadFault.At(1, "cannot be read: there is no such file"), MadeKinds.Rich);

    internal static GardenBook Good(string table, string? book = null)
    {
        var read = Read(table, book);
        Assert.True(read.IsGood, string.Join("\n", read.Faults.Select(fault => fault.ToldOf("quay.yaml"))) + "\n" + table);
        return read.Value!;
    }

    [Fact]
    public void Read_Rows_AreItemsLikeThoseOfTheBook()
    {
        var book = Good("""
            id,kind,name,area,count,height,stands_on,filled,value,endangers,jobs,crop,ripe
            lee-drum,drum,"Drum, green",porch,2,3 ft,gravel,40 %,,car street,strap fill:9 move:12:2,,
            vines,trellis,,rows,1,,,,15,,none,tomato,0.2
            bare-drum,drum,,rows,3,,,,,,,,
            """);

        Assert.Equal(["lee-drum", "vines", "bare-drum"], book.Items.Select(item => item.Id));
        var drum = book.Items[0];
        Assert.Equal(("Drum, green", "porch", 2, 60.0, true), (drum.Name, drum.AreaId, drum.Count, drum.ValueUsd, drum.ValueTypical));
        Assert.Equal(new ItemBuild { HeightM = 0.9144, Surface = Surface.Gravel, Filled = 0.4 }, drum.Written);
        Assert.Equal(["car", "street"], drum.Endangers);
        Assert.Equal([(JobKind.Strap, 20, 2), (JobKind.Fill, 9, 1), (JobKind.Move, 12, 2)], drum.Jobs.Select(job => (job.Kind, job.Minutes, job.People)));
        Assert.Equal(("Vines", 15.0, 0.2, false), (book.Items[1].Name, book.Items[1].ValueUsd, book.Items[1].Harvest!.Ripe, book.Items[1].JobsTypical));
        Assert.Empty(book.Items[1].Jobs);
        Assert.Equal(["bare-drum/fill", "bare-drum/strap"], book.Items[2].Jobs.Select(job => job.Id));
    }

    [Fact]
    public void Read_TableBesideItems_AddsToThem() =>
        Assert.Equal(["fig-pots", "bean-rows", "vines"], Good("id,kind,area,count\nvines,trellis,rows,1\n", WithTable).Items.Select(item => item.Id));

    [Theory]
    [InlineData("\uFEFFid,kind,area,count,height\r\nvines,trellis,rows,1,1.5 m\r\n")]
    [InlineData("id;kind;area;count;height\nvines;trellis;rows;1;1.5 m\n")]
    [InlineData("kind,height,count,area,id\ntrellis,150 cm,1,rows,vines")]
    [InlineData("id , kind,area,count,height\n vines , trellis , rows , 1 , 1.5 m \n,,,,\n")]
    public void Read_AsSpreadsheetsWriteIt_IsTheSameItem(string table)
    {
        var item = Assert.Single(Good(table).Items);

        Assert.Equal(("vines", "trellis", "rows", 1, 1.5), (item.Id, item.Kind, item.AreaId, item.Count, item.Written.HeightM));
    }

    public static TheoryData<string, int, string[]> OneFault => new()
    {
        { "", 1, ["the file is empty", "id,name,kind,area,count"] },
        { "PK\u0003\u0004", 1, ["a spreadsheet's own file", "save it as CSV"] },
        { "id,kind,area,count,colour\nvines,trellis,rows,1,red\n", 1, ["unknown column 'colour'"] },
        { "id,kind,area,count,hieght\nvines,trellis,rows,1,2 m\n", 1, ["unknown column 'hieght'", "did you mean 'height'?"] },
        { "id,kind,area,count,count\nvines,trellis,rows,1,1\n", 1, ["the column 'count' is there twice"] },
        { "id,kind\nvines,trellis\n", 1, ["no column 'area', 'count'"] },
        { "id,kind,area,count\nvines,trellis,rows\n", 2, ["has 3 cells, but the header has 4", "write empty cells too"] },
        { "id,kind,area,count\nvines,trellis,rows,1,5 m\n", 2, ["has 5 cells, but the header has 4", "in quotes"] },
        { "id;kind;area;count;height\nvines;trellis;rows;1;1,5 m\n", 2, ["'height' of item 'vines'", "a comma in the number '1,5 m'; write a point"] },
        { "id,kind,area,count,value\nvines,trellis,rows,1,\"1,200\"\n", 2, ["'value' of item 'vines'", "a comma in the number"] },
        { "id,kind,area,count\nvines,trellis,rows,\n", 2, ["item 'vines' has no 'count'"] },
        { "id,kind,area,count\n\nvines,trelis,rows,1\n", 3, ["did you mean 'trellis'?"] },
        { "id,kind,area,count\nvines,trellis,rosw,1\n", 2, ["the area 'rosw'", "did you mean 'rows'?"] },
        { "id,kind,area,count\nvines,trellis,rows,1\nvines,trellis,rows,2\n", 3, ["used twice", "in line 2 of plants.csv"] },
        { "id,kind,area,count,jobs\nvines,trellis,rows,1,tie mvoe:5\n", 2, ["did you mean 'move'?"] },
        { "id,kind,area,count,jobs\nvines,trellis,rows,1,move\n", 2, ["job of item 'vines' 'move' has no 'minutes'"] },
        { "id,kind,area,count,jobs\nvines,trellis,rows,1,tie:soon\n", 2, ["'minutes' of job of item 'vines' 'tie'", "'soon'"] },
        { "id,kind,area,count,jobs\nvines,trellis,rows,1,tie:5:9\n", 2, ["'people'", "from 1 to 2"] },
        { "id,kind,area,count,name\nvines,trellis,rows,1,\"on two\nlines\"\n", 2, ["'name' of item 'vines' must be one line"] },
        { "id,kind,area,count,name\nvines,trellis,rows,1,\"open\n", 2, ["never closed"] },
    };

    [Theory]
    [MemberData(nameof(OneFault))]
    public void Read_OneFault_NamesTheTableItsLineAndTheMend(string table, int line, string[] words)
    {
        var fault = Assert.Single(Read(table).Faults);

        Assert.Equal(("plants.csv", line), (fault.File, fault.Line));
        Assert.StartsWith($"gardens/plants.csv:{line}: ", fault.ToldOf("gardens/quay.yaml"));
        Assert.All(words, word => Assert.Contains(word, fault.Reason));
    }

    [Fact]
    public void Read_FaultsInBookAndTable_AreAllToldBookFirst()
    {
        var faults = Read("id,kind,area,count\nvines,trellis,rows,0\nfig-pots,drum,rows,1\n", WithTable.Replace("    count: 40", "    count: many")).Faults;

        Assert.Equal([null, "plants.csv", "plants.csv"], faults.Select(fault => fault.File));
        Assert.Contains("the item in line 25 has it too", faults[2].Reason);
    }

    [Theory]
    [InlineData("../plants.csv")]
    [InlineData("/etc/plants.csv")]
    [InlineData("more/plants.csv")]
    [InlineData("C:plants.csv")]
    [InlineData("plants.txt")]
    public void Read_TableElsewhere_IsRefused(string name) =>
        Assert.Contains("the name of a .csv file beside the book", Assert.Single(Read("", OnlyTable.Replace("plants.csv", $"\"{name}\"")).Faults).Reason);

    [Fact]
    public void Read_TableThatIsNotThere_IsAFaultOfThatFile()
    {
        var fault = Assert.Single(Read("", OnlyTable.Replace("plants.csv", "other.csv")).Faults);

        Assert.Equal(("other.csv", "cannot be read: there is no such file"), (fault.File, fault.Reason));
    }

    [Fact]
    public void Read_BookThatIsNoFile_HasNothingBesideIt() =>
        Assert.Contains("only be read where the book is a file", Assert.Single(GardenReader.Read(OnlyTable, "quay.yaml").Faults).Reason);

    [Fact]
    public void Read_TooManyRows_IsRefused()
    {
        var table = "id,kind,area,count\n" + string.Concat(Enumerable.Range(0, 2001).Select(i => $"i{i},bed,rows,1\n"));

        Assert.Contains("the table has 2001 rows, more than 2000", Assert.Single(Read(table).Faults).Reason);
    }

    /// <summary>Whatever is done to a good table, reading it gives items or faults with real lines, never an exception.</summary>
    [Fact]
    public void Read_SpoiltTable_GivesItemsOrFaultsNeverAnException() =>
        Gen.Select(Gen.Double.Unit, Gen.Int[0, 9], Gen.OneOf(MadeBooks.Any("\"", ",", ";", "\n", "\r", "\0", ":", "  "), Gen.String[0, 4])).Array[1, 5].Sample(
            changes =>
            {
                var table = changes.Aggregate(ItemTemplate.Text(), (text, change) => Spoilt(text, change.Item1, change.Item2, change.Item3));
                var read = Read(table);
                return read.IsGood ? read.Faults.Count == 0 : read.Faults.All(fault => fault.Line >= 1 && fault.Line <= table.Length + 1 && fault.Reason.Length > 0);
            },
            iter: 3000);

    private static string Spoilt(string text, double at, int drop, string put)
    {
        var start = (int)(at * text.Length);
        return text[..start] + put + text[Math.Min(text.Length, start + drop)..];
    }
}
