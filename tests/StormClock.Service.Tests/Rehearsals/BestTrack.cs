using System.Globalization;
using StormClock.Core.Tests;

namespace StormClock.Service.Tests.Rehearsals;

/// <summary>
/// What really happened: when 34 kt wind was at a place by the best track (HURDAT2), positions and radii by straight lines
/// between rows, radii times 0.85 (largest to mean reach), each quadrant as given. Written apart from the product's geometry.
/// </summary>
internal static class BestTrack
{
    private const double MeanReach = 0.85;
    private static readonly Duration Step = Duration.FromMinutes(15);

    /// <summary>Every quarter of an hour with 34 kt at the place, in order.</summary>
    public static IReadOnlyList<Instant> Gales(string stormId, double latDeg, double lonDeg)
    {
        var rows = Rows(stormId);
        var gales = new List<Instant>();
        for (var i = 1; i < rows.Count; i++)
        {
            var (from, to) = (rows[i - 1], rows[i]);
            for (var at = from.At; at < to.At; at += Step)
            {
                var share = (at - from.At) / (to.At - from.At);
                if (Blows(from, to, share, latDeg, lonDeg)) gales.Add(at);
            }
        }

        return gales;
    }

    private static bool Blows(Row from, Row to, double share, double latDeg, double lonDeg)
    {
        var lat = from.LatDeg + (share * (to.LatDeg - from.LatDeg));
        var lon = from.LonDeg + (share * (to.LonDeg - from.LonDeg));
        var northNmi = (latDeg - lat) * 60;
        var eastNmi = (lonDeg - lon) * 60 * Math.Cos((latDeg + lat) / 2 * Math.PI / 180);
        var quadrant = (eastNmi >= 0, northNmi >= 0) switch { (true, true) => 0, (true, false) => 1, (false, false) => 2, _ => 3 };
        var radius = from.Radii34[quadrant] + (share * (to.Radii34[quadrant] - from.Radii34[quadrant]));
        return radius > 0 && Math.Sqrt((northNmi * northNmi) + (eastNmi * eastNmi)) <= radius * MeanReach;
    }

    private static List<Row> Rows(string stormId) =>
        [.. File.ReadLines(Path.Combine(Shared.Folder("hurdat2"), "hurdat2_atlantic_2004_2025.csv"))
            .Where(line => line.StartsWith(stormId + ",", StringComparison.Ordinal))
            .Select(line => line.Split(','))
            .Select(cells => new Row(
                NodaTime.Text.InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm'Z'").Parse(cells[2]).Value,
                Number(cells[5]), Number(cells[6]), [Number(cells[9]), Number(cells[10]), Number(cells[11]), Number(cells[12])]))];

    private static double Number(string cell) => cell.Length == 0 ? 0 : double.Parse(cell, CultureInfo.InvariantCulture);

    private sealed record Row(Instant At, double LatDeg, double LonDeg, double[] Radii34);
}
