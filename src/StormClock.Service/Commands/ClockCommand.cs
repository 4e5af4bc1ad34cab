using System.CommandLine;
using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Service.Commands;

/// <summary><c>clock</c>: what given advisories mean at given places.</summary>
internal static class ClockCommand
{
    // Sampling a storm costs about as much as looking at it from two places.
    private const int PlacesInPiece = 50;

    public static Command Make()
    {
        var advisories = new Option<string>("--advisories") { Required = true, Description = "An advisory text, or a folder of them." };
        var places = new Option<string>("--places") { Required = true, Description = "A CSV file with a line for each place: name,lat,lon in degrees." };
        var json = new Option<bool>("--json") { Description = "One JSON array on stdout and nothing else." };
        var command = new Command("clock", "When wind of 34, 50 and 64 kt could reach places, and how sure that is.") { advisories, places, json };
        command.SetAction(parsed => Run(parsed.GetValue(advisories)!, parsed.GetValue(places)!, parsed.GetValue(json)));
        return command;
    }

    private static int Run(string advisoriesPath, string placesPath, bool json)
    {
        var inputs = new Inputs();
        var messages = inputs.Advisories(advisoriesPath).Select(entry => entry.Advisory).ToList();
        var advisories = messages.OfType<CycloneAdvisory>().ToList();
        var tables = messages.OfType<WindProbabilityAdvisory>().ToList();
        var places = Places(inputs, placesPath);
        if (inputs.Report()) return ExitCode.BadInput;
        if (advisories.Count == 0)
        {
            Console.Error.WriteLine($"{advisoriesPath}: holds no tropical cyclone forecast/advisory");
            return ExitCode.BadInput;
        }

        var rows = Rows(advisories, places, tables);
        if (json) Json.Print(rows);
        else foreach (var row in rows) Print(row);
        return ExitCode.Good;
    }

    /// <summary>A row for each advisory and place, in that order, worked out on all cores.</summary>
    private static ClockRow[] Rows(List<CycloneAdvisory> advisories, List<(string Name, GeoPoint At)> places, List<WindProbabilityAdvisory> tables)
    {
        var rows = new ClockRow[advisories.Count * places.Count];
        var pieces = (places.Count + PlacesInPiece - 1) / PlacesInPiece;
        Parallel.For(0, advisories.Count * pieces, piece =>
        {
            var (which, from) = (piece / pieces, piece % pieces * PlacesInPiece);
            var winds = new PlaceWinds(WindOutlook.Storm(advisories[which], ClockRow.ThresholdsKt));
            for (var p = from; p < Math.Min(from + PlacesInPiece, places.Count); p++)
                rows[which * places.Count + p] = ClockRow.Of(advisories[which], places[p].Name, places[p].At, winds.At(places[p].At), Official(tables, advisories[which], places[p].At));
        });
        return rows;
    }

    private static void Print(ClockRow row)
    {
        Console.WriteLine($"{row.Storm} advisory {row.Advisory} ({row.Issued}) at {row.Place}");
        foreach (var wind in row.Wind)
        {
            var times = wind.EarliestReasonable is null
                ? "(almost) never within the forecast"
                : $"as early as {Short(wind.EarliestReasonable)}, most likely {Short(wind.MostLikely)}, latest {Short(wind.Latest)}, over {Short(wind.End)}";
            Console.WriteLine($"  {wind.ThresholdKt:0} kt sustained: {wind.Chance:0 %} chance; {times}");
        }

        if (row.WindFrom is { } from)
        {
            Console.WriteLine($"  The wind comes first from {CompassPoint.Of(from.ArrivalDeg)}, at the end from {CompassPoint.Of(from.EndDeg)}, if the track holds.");
        }

        if (row.SourcesDiffer is true)
        {
            Console.WriteLine($"  Sources differ: the official chance of 34 kt at {row.OfficialLocation} is {row.Wind[0].OfficialChance:0 %}.");
        }

        Console.WriteLine("  Beyond the forecast nothing is known. Official orders come first.");
    }

    /// <summary>The newest table issued with the advisory, where it names a location near enough.</summary>
    private static OfficialChances? Official(List<WindProbabilityAdvisory> tables, CycloneAdvisory advisory, GeoPoint place) =>
        tables.LastOrDefault(table => table.BelongsTo(advisory)) is { } table ? OfficialChances.At(table, place) : null;

    private static string Short(string? at) => at ?? "unknown";

    private static List<(string Name, GeoPoint At)> Places(Inputs inputs, string path)
    {
        var places = new List<(string, GeoPoint)>();
        if (inputs.Text(path) is not { } text) return places;
        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim();
            if (line.Length == 0 || line[0] == '#' || (i == 0 && line.Equals("name,lat,lon", StringComparison.OrdinalIgnoreCase))) continue;
            var cells = line.Split(',');
            if (cells.Length != 3 || cells[0].Trim().Length == 0)
            {
                inputs.Fault($"{path}:{i + 1}: a place is three cells, name,lat,lon; put names with a comma in another way");
                continue;
            }

            var read = new Inputs();
            if (read.Place($"{cells[1]},{cells[2]}", "") is { } at) places.Add((cells[0].Trim().Trim('"'), at));
            else inputs.Fault($"{path}:{i + 1}: '{cells[1].Trim()},{cells[2].Trim()}' is not a latitude and a longitude in degrees");
        }

        if (places.Count == 0) inputs.Fault($"{path}: holds no place; write a line such as Home,26.64,-81.87");
        return places;
    }
}
