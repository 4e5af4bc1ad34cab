using CsCheck;
using StormClock.Service.Books;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Books;

public class BookMutationTests
{
    private static readonly string[] Splinters =
        ["\n", ": ", "- ", "{", "}", "[", "]", "\"", "'", "&a ", "*a", "!x ", "#", "\t", "|\n", ">\n", "? ", "---\n", "...\n", "%YAML 9.9\n", "\0", "\uD800", "é", "999999999999", "-", "null", "<<: ", "\r", "@", "`"];

    private static readonly Gen<(double At, int Drop, string Put)> Change =
        Gen.Select(Gen.Double.Unit, Gen.Frequency((3, Gen.Int[0, 3]), (1, Gen.Int[0, 80])), Gen.OneOf(Gen.Int[0, Splinters.Length - 1].Select(i => Splinters[i]), Gen.String[0, 4]));

    private static readonly string Detailed = MadeKinds.Book(
        "kind: drum\ncount: 2\nheight: 3 ft 2 in\nmass: 20 lb\nmass_wet: 22 lb\nstanding: strapped\nstands_on: gravel\nholds: 55 gal\nfilled: 40 %\ntie: 110 lbf\nheld_to: 45 mph gust\ncrop: tomato\nripe: 0.3\njobs: none",
        "us");

    /// <summary>Whatever is done to a good book, reading it gives a book or faults with real lines, never an exception.</summary>
    [Fact]
    public void Read_SpoiltBook_GivesBookOrFaultsNeverAnException()
    {
        var large = File.ReadAllText(ConfigFiles.PracticeGardens[0]);
        Gen.Select(MadeBooks.Any(SampleBook.Good, large, Detailed), Change.List[1, 6]).Sample(
            (good, changes) =>
            {
                var text = changes.Aggregate(good, Apply);
                var read = GardenReader.Read(text, "spoilt.yaml");
                return read.IsGood
                    ? read.Faults.Count == 0
                    : read.Faults.Count > 0 && read.Faults.All(fault => fault.Line >= 1 && fault.Line <= text.Length + 1 && fault.Reason.Length > 0);
            },
            iter: 4000);
    }

    private static string Apply(string text, (double At, int Drop, string Put) change)
    {
        var at = (int)(change.At * text.Length);
        return text[..at] + change.Put + text[Math.Min(text.Length, at + change.Drop)..];
    }
}
