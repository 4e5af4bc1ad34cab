using System.Text.RegularExpressions;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;

namespace StormClock.Core.Tests.Formats;

/// <summary>
/// Every file of the real data with what comes of it: read as what and how many, or refused and why. The first row whose pattern
/// fits a file's path holds for it; each row also tells how many files it must hold for, so that none goes by unseen.
/// </summary>
public class EveryFileTests(ITestOutputHelper output)
{
    private static readonly (string Path, int Files, string Outcome)[] Table =
    [
        (@"^nhc-tcm/", 549, "1 CycloneAdvisory"),
        (@"^nhc-pws/", 275, "1 WindProbabilityAdvisory"),
        (@"^nhc-tcp/", 516, "1 CyclonePosition"),
        (@"^nhc-tcm-old-formats/charley2004/.*prblty", 25, "refused: line 1: this is a table of strike probabilities"),
        (@"^nhc-tcm-old-formats/", 38, "1 CycloneAdvisory"),
        (@"^nws-text-vtec/TCP(AT|EP)", 4, "1 CyclonePosition"),
        (@"^nws-text-vtec/tropical_TCPSP4", 1, "refused: line 1: this is a public advisory in Spanish"),
        (@"^nws-text-vtec/tropical_TCUCP1", 1, "refused: line 1: this is a tropical cyclone update"),
        (@"^nws-text-vtec/TCDAT5", 1, "refused: line 1: this is a tropical cyclone discussion"),
        (@"^nws-text-vtec/HLS", 1, "refused: line 1: this is a local statement in words without VTEC lines"),
        (@"^nws-text-vtec/(CFW|NPW_|TCV_TCVHGX)", 3, "4 AlertMessage"),
        (@"^nws-text-vtec/(FFW|FLS|TCV_TCVMLB|vtec_NPWDMX)", 5, "1 AlertMessage"),
        (@"^nws-api/gridpoint-raw-", 3, "1 PointForecast"),
        (@"^nws-api/forecast-hourly-", 3, "1 PointForecast"),
        (@"^nws-api/forecast-GUM", 1, "refused: line 1: this is a forecast by day and night in words"),
        (@"^nws-api/observations-(latest|multiple)", 2, "1 Observation"),
        (@"^nws-api/observations-missing-value", 1, "refused: features[0]/properties/station: is missing"),
        (@"^nws-api/points", 1, "refused: line 1: this is an index that tells where the forecasts of a point are"),
        (@"^nws-api/alerts-", 2, "refused: line 1: this is a list of messages (JSON)"),
        (@"^nhc-currentstorms/", 5, "refused: line 1: this is a list of messages (JSON, active storms)"),
        (@"^nhc-rss/", 8, "refused: line 1: this is an RSS feed (a list of messages)"),
        (@"^cap-feeds/.*\.rss$", 1, "refused: line 1: this is an RSS feed (a list of messages)"),
        (@"^cap-feeds/", 8, "refused: line 1: this is an Atom feed (a list of messages)"),
        (@"^cap/", 30, "1 AlertMessage"),
        (@"^cap-standard-examples/cap1\.", 12, "1 AlertMessage"),
        (@"^cap-invalid/google-(invalid|no_optional_fields)\.xml$", 2, "1 AlertMessage"),
        (@"^cap-invalid/.*\.atom\.xml$", 2, "refused: line 1: this is an Atom feed (a list of messages)"),
        (@"^cap-invalid/google-xee", 1, "refused: line 1: not well-formed XML, or XML with a DTD"),
        (@"^cap-invalid/.*\.html$", 1, "refused: line 1: this is an HTML page"),
        (@"^cap-xsd/", 4, "refused: schema: this is an XML document <schema>, not a single CAP alert"),
        (@"^iwxxm/tc-advisory-A2-2\.(xml|tac)$", 2, "1 CycloneAdvisory"),
        (@"^iwxxm/.*\.xsd$", 1, "refused: schema: this is an XML document of the aviation weather exchange, but no tropical cyclone advisory"),
        (@"^clock-cases/.*\.gz$", 2, "refused: line 1: this is binary data"),
        (@"^(clock-cases|geo|hurdat2|nhc-errors|nhc-tables|observations|atcf-adeck|atcf-bdeck)/", 76, "refused: line 1: this is a text of another kind"),
        (@"^README\.md$", 1, "refused: line 1: this is a text of another kind"),
    ];

    [Fact]
    public void Reading_EveryFile_HasTheOutcomeOfTheTable()
    {
        var root = Shared.Folder("");
        var counts = new int[Table.Length];
        var wrong = new List<string>();
        var files = Shared.Files("");
        foreach (var file in files)
        {
            var path = Path.GetRelativePath(root, file).Replace('\\', '/');
            var row = Array.FindIndex(Table, one => Regex.IsMatch(path, one.Path));
            var outcome = OutcomeOf(MessageReader.ReadAll(File.ReadAllBytes(file)));
            if (row < 0) wrong.Add($"{path} is in no row: {outcome}");
            else if (!(outcome == Table[row].Outcome || (outcome.StartsWith("refused", StringComparison.Ordinal) && outcome.StartsWith(Table[row].Outcome, StringComparison.Ordinal)))) wrong.Add($"{path}: {outcome}, not {Table[row].Outcome}");
            else counts[row]++;
        }

        for (var row = 0; row < Table.Length; row++)
        {
            output.WriteLine($"{counts[row],5}  {Table[row].Path}: {Table[row].Outcome}");
            if (counts[row] != Table[row].Files) wrong.Add($"{Table[row].Path}: {counts[row]} files, not {Table[row].Files}");
        }

        output.WriteLine($"{counts.Sum()} of {files.Count} files have the outcome of the table.");
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static string OutcomeOf(ReadResult<IReadOnlyList<Advisory>> result) =>
        result.Value is { } read
            ? string.Join(" + ", read.GroupBy(one => one.GetType().Name).Select(kind => $"{kind.Count()} {kind.Key}"))
            : "refused: " + string.Join("; ", result.Faults.Take(3));
}
