using System.Globalization;
using NodaTime.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Tests.Formats;

/// <summary>
/// Number for number against tables that others parsed from the same archive (data/README.md, nhc-tables): every row of
/// the tables must be in the readings and the other way round. Faults found in the tables, each checked against the text:
/// <list type="bullet">
/// <item>Matthew, fcst.csv: the 82 points of day 4 and 5 all stand at 05 UTC; the texts give the synoptic hours.</item>
/// <item>Florence and Michael, fcst_wr.csv: the 64 kt radii at 48 h (32 and 5 rows) are left out of the tables.</item>
/// <item>Florence: the tables have advisory 68, whose text is not in the collection.</item>
/// </list>
/// </summary>
public class ForecastAdvisoryTablesTests
{
    private static readonly InstantPattern Minute = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm'Z'");

    /// <param name="rows">Rows of position, radii now, forecast points and forecast radii in the tables, 68 of Florence apart.</param>
    /// <param name="leftOut">Rows of 64 kt at 48 h that the tables lack.</param>
    [Theory]
    [InlineData("al142016-matthew", new[] { 47, 136, 307, 553 }, 0)]
    [InlineData("al092017-harvey", new[] { 43, 56, 283, 246 }, 0)]
    [InlineData("al112017-irma", new[] { 52, 144, 344, 594 }, 0)]
    [InlineData("al062018-florence", new[] { 67, 140, 469, 650 }, 32)]
    [InlineData("al142018-michael", new[] { 23, 44, 152, 222 }, 5)]
    public void Reading_StormWithTables_GivesTheSameNumbers(string storm, int[] rows, int leftOut)
    {
        var read = Shared.Files($"nhc-tcm/{storm}").Select(file => ForecastAdvisoryReader.Read(File.ReadAllBytes(file)).Value!).ToList();

        AssertSame(Table(storm, "adv.csv", 0, 1, 2, 5, 6, 7, 8), read.Select(Position), rows[0]);
        AssertSame(Table(storm, "wr.csv"), read.SelectMany(one => Reach(one, one.Now, withValid: false)), rows[1]);
        AssertSame(Table(storm, "fcst.csv"), read.SelectMany(one => one.Forecast.Where(p => p.Centre is not null).Select(p => Point(one, p))), rows[2]);

        var reach = read.SelectMany(one => one.Forecast.SelectMany(p => Reach(one, p, withValid: true))).ToList();
        var lacking = leftOut == 0 ? [] : read.SelectMany(one => one.Forecast.Where(p => Lead(one, p) == 48).SelectMany(p => Reach(one, p, withValid: true)))
            .Where(row => row.Split(',')[4] == "64").ToList();
        Assert.Equal(leftOut, lacking.Count);
        AssertSame(Table(storm, "fcst_wr.csv"), reach.Except(lacking), rows[3]);
    }

    private static void AssertSame(List<string> table, IEnumerable<string> readings, int rows)
    {
        var ours = readings.ToList();
        Assert.Empty(table.Except(ours).Select(row => "only in the table: " + row));
        Assert.Empty(ours.Except(table).Select(row => "only in the text: " + row));
        Assert.Equal(rows, table.Count);
        Assert.Equal(rows, ours.Count);
    }

    private static List<string> Table(string storm, string table, params int[] columns) =>
    [
        .. File.ReadLines(Path.Combine(Shared.Folder($"nhc-tables/{storm}"), table)).Skip(1)
            .Where(line => !line.StartsWith("AL062018,68,", StringComparison.Ordinal))
            .Select(line => line.Split(','))
            .Select(cells => string.Join(',', columns.Length == 0 ? cells : columns.Select(column => cells[column]))),
    ];

    private static string Position(CycloneAdvisory one) =>
        $"{Start(one)},{Num(one.Now.Centre!.Value.LatDeg)},{Num(one.Now.Centre!.Value.LonDeg)},{Num(one.Now.MaxWindKt)},{Num(one.Now.GustKt)}";

    private static string Point(CycloneAdvisory one, CyclonePoint point)
    {
        var valid = Minute.Format(point.Valid);
        if (one.StormId == "AL142016" && Lead(one, point) > 72) valid = valid[..11] + "05:00Z";
        return $"{Start(one)},{valid},{Num(point.Centre!.Value.LatDeg)},{Num(point.Centre!.Value.LonDeg)},{Num(point.MaxWindKt)},{Num(point.GustKt)}";
    }

    private static IEnumerable<string> Reach(CycloneAdvisory one, CyclonePoint point, bool withValid)
    {
        var valid = withValid ? "," + Minute.Format(point.Valid) : "";
        (int Kt, QuadrantRadii? Reach)[] all = [(34, point.Radii34), (50, point.Radii50), (64, point.Radii64)];
        foreach (var (kt, reach) in all)
        {
            if (reach is { } r) yield return $"{Start(one)}{valid},{kt},{Num(r.NeNmi)},{Num(r.SeNmi)},{Num(r.SwNmi)},{Num(r.NwNmi)}";
        }
    }

    private static string Start(CycloneAdvisory one) => $"{one.StormId},{one.Number},{Minute.Format(one.IssuedAt)}";

    private static double Lead(CycloneAdvisory one, CyclonePoint point) => (point.Valid - one.Synoptic).TotalHours;

    private static string Num(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";
}
