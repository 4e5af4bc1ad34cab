using System.Text;
using CsCheck;
using StormClock.Service.Books;
using StormClock.Service.Books.Csv;

namespace StormClock.Service.Tests.Books.Csv;

public class CsvTextTests
{
    private static (string[][] Cells, int[] Lines, string[] Faults) Read(string text, char separator = ',')
    {
        var faults = new FaultList();
        var rows = CsvText.Rows(text, separator, faults);
        return ([.. rows.Select(row => row.Cells.ToArray())], [.. rows.Select(row => row.Line)], [.. faults.InOrder().Select(fault => $"{fault.Line}: {fault.Reason}")]);
    }

    /// <summary>RFC 4180 section 2, rule by rule.</summary>
    public static TheoryData<string, string[][]> Good => new()
    {
        { "a,b\r\nc,d\r\n", [["a", "b"], ["c", "d"]] }, // rule 1: lines end in CRLF
        { "a,b\nc,d", [["a", "b"], ["c", "d"]] }, // rule 2: the last may lack its end; LF alone is common
        { "a,b\rc,d\r", [["a", "b"], ["c", "d"]] },
        { "a, b ,\n", [["a", " b ", ""]] }, // rule 4: blanks are part of a cell
        { "\"a\",\"b\"\n", [["a", "b"]] }, // rule 5
        { "\"a,b\",\"c\r\nd\"\ne,f", [["a,b", "c\r\nd"], ["e", "f"]] }, // rule 6
        { "\"say \"\"when\"\"\",\"\"\n", [["say \"when\"", ""]] }, // rule 7
        { "a,b\n\n,\n \nc,d\n", [["a", "b"], ["c", "d"]] }, // blank rows, left behind by spreadsheets
        { "", [] },
    };

    [Theory]
    [MemberData(nameof(Good))]
    public void Rows_ByTheRules_GiveTheirCells(string text, string[][] cells)
    {
        var read = Read(text);

        Assert.Empty(read.Faults);
        Assert.Equal(cells, read.Cells);
    }

    [Fact]
    public void Rows_CellOverSeveralLines_CountLinesOfTheFile() => Assert.Equal([1, 2, 5], Read("a,b\n\"x\ny\nz\",1\nc,d\n").Lines);

    [Fact]
    public void Rows_PartedBySemicolons_KeepTheirCommas() => Assert.Equal([["a", "1,5"], ["b;c", ""]], Read("a;1,5\n\"b;c\";\n", ';').Cells);

    [Theory]
    [InlineData("a,b\nc,\"d\ne,f\n", "2: a cell in quotes that begins here is never closed")]
    [InlineData("a,b\nc,6\" pot\n", "2: a quotation mark stands inside a cell")]
    [InlineData("a,b\nc,\"d\"e\n", "2: something stands behind the closing quotation mark")]
    public void Rows_QuotesGoneWrong_NameTheLine(string text, string beginning) => Assert.StartsWith(beginning, Assert.Single(Read(text).Faults));

    [Fact]
    public void Cell_AnyText_ReadsBackTheSame() =>
        Gen.String[Gen.Char["ab ,;\"\r\n\té"], 0, 8].Array[1, 5].Where(cells => cells.Any(cell => cell.Trim().Length > 0)).Sample(
            cells =>
            {
                var line = new StringBuilder().AppendJoin(',', cells.Select(CsvText.Cell)).Append("\r\n").ToString();
                Assert.Equal([cells], Read(line).Cells);
            },
            iter: 2000);
}
