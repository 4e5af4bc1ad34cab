using System.Text.Json;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary><c>clock</c> over several messages and places, with a table of official chances among them.</summary>
public sealed class ClockCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public ClockCommandTests()
    {
        Directory.CreateDirectory(folder.File("messages"));
        foreach (var number in new[] { "009", "010" })
        {
            File.Copy(Path.Combine(ConfigFiles.Folder, "practice", "storm", $"{number}.txt"), folder.File($"messages/{number}.txt"));
        }

        File.WriteAllText(folder.File("places.csv"), "name,lat,lon\nNear,30.1,-84.2\nFar,10,10\n");
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Clock_TableOfOneAdvisory_BearsOnItsRowsNearItsLocations()
    {
        var alone = await RowsAsync();
        File.WriteAllText(folder.File("messages/pws.txt"), Table());
        var rows = await RowsAsync();

        Assert.Equal(["9 Near", "9 Far", "10 Near", "10 Far"], rows.Select(row => $"{Text(row, "advisory")} {Text(row, "place")}"));
        Assert.Equal([null, null, "GFMX 301N 842W", null], rows.Select(row => Text(row, "officialLocation")));
        var (before, after) = (Chances(alone[2]), Chances(rows[2]));
        Assert.Equal(before[0], after[0]);
        Assert.Equal(0.85 * before[1] + 0.15 * 0.02, after[1], 1e-4);
        Assert.Equal(0.5 * before[2] + 0.5 * 0.01, after[2], 1e-4);
        Assert.Equal([0.05, 0.02, 0.01], rows[2].GetProperty("wind").EnumerateArray().Select(wind => wind.GetProperty("officialChance").GetDouble()));
        Assert.All(new[] { 0, 1, 3 }, i => Assert.Equal(alone[i].GetRawText(), rows[i].GetRawText()));
    }

    [Fact]
    public async Task Clock_TableAlone_IsNoForecast()
    {
        File.WriteAllText(folder.File("pws.txt"), Table());
        var result = await CommandRun.RunAsync("clock", "--json", "--advisories", folder.File("pws.txt"), "--places", folder.File("places.csv"));
        Assert.Equal(1, result.Exit);
        Assert.Contains("holds no tropical cyclone forecast/advisory", result.Errors);
    }

    /// <summary>Issued with number 10 of the practice storm.</summary>
    private static string Table() => """
        TABLEHEAD

        FORECAST HOUR    (12)   (24)    (36)    (48)    (72)    (96)   (120)
        LOCATION       KT
        GFMX 301N 842W 34  X   1( 1)   1( 2)   1( 3)   2( 5)   X( 5)   X( 5)
        GFMX 301N 842W 50  X   X( X)   X( X)   1( 1)   1( 2)   X( 2)   X( 2)
        GFMX 301N 842W 64  X   X( X)   X( X)   X( X)   1( 1)   X( 1)   X( 1)
        $$
        """.Replace("TABLEHEAD", Heading());

    /// <summary>Title, office and date of the practice advisory.</summary>
    private static string Heading()
    {
        var lines = File.ReadAllLines(Path.Combine(ConfigFiles.Folder, "practice", "storm", "010.txt"));
        var title = Array.FindIndex(lines, line => line.Contains("FORECAST/ADVISORY NUMBER", StringComparison.Ordinal));
        return string.Join('\n', lines[title..(title + 3)]).Replace("FORECAST/ADVISORY", "WIND SPEED PROBABILITIES");
    }

    private async Task<List<JsonElement>> RowsAsync()
    {
        var result = await CommandRun.RunAsync("clock", "--json", "--advisories", folder.File("messages"), "--places", folder.File("places.csv"));
        Assert.Equal((0, ""), (result.Exit, result.Errors));
        return [.. JsonDocument.Parse(result.Output).RootElement.EnumerateArray()];
    }

    private static string? Text(JsonElement row, string name) => row.GetProperty(name).GetString();

    private static double[] Chances(JsonElement row) => [.. row.GetProperty("wind").EnumerateArray().Select(wind => wind.GetProperty("chance").GetDouble())];
}
