using System.Globalization;

namespace StormClock.Skill;

/// <summary>Makes the compact table of counties from which <c>check</c> proposes codes.</summary>
internal static class CountiesCommand
{
    private const string Source = "geo/us_county_population_centroids_east.csv";

    public static int Run(TextWriter output)
    {
        var counties = File.ReadLines(SharedData.Need(Source)).Skip(1).Select(line => line.Split(',')).Where(row => row.Length >= 3)
            .Select(row => string.Create(CultureInfo.InvariantCulture, $"{row[0]} {Degrees(row[1]):0.00} {Degrees(row[2]):0.00}"))
            .Order(StringComparer.Ordinal).ToList();
        var file = Path.Combine(SharedData.Repository()!, "src", "StormClock.Service", "Books", "Counties", "us-counties.txt");
        File.WriteAllText(file, string.Join('\n', counties.Prepend(
            "# County (FIPS 6-4), latitude and longitude of the middle of its people, degrees. Eastern United States.\n"
            + "# Source: US Census Bureau, centres of population by county, census of 2010 (M); work of the US federal government, public domain.\n"
            + "# Made by tools/StormClock.Skill, command counties; rounded to 0.01 degree.")) + "\n");
        output.WriteLine($"{counties.Count} counties in {file}");
        return 0;
    }

    private static double Degrees(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
