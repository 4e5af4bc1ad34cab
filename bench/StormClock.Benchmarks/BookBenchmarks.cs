using System.Text;
using BenchmarkDotNet.Attributes;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Tests.Hazards;
using StormClock.Core.Worth;
using StormClock.Service.Books;

namespace StormClock.Benchmarks;

/// <summary>A book of a thousand items given by kind and count alone, each with the usual jobs of its kind.</summary>
public class BookBenchmarks
{
    private static readonly string[] Kinds =
        ["potted_tree", "potted_plant", "hanging", "trellis", "tall_crop", "sheet", "rain_barrel", "fruit_tree", "furniture", "cold_frame", "bin", "shade_sail"];

    private static readonly string Text = Written();

    private readonly GardenBook book = GardenReader.Read(Text, "bench.yaml").Value!;
    private readonly SiteWind[] winds;

    public BookBenchmarks() => winds = [new(book.Sites[0], WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, [34]))];

    /// <summary>From the text to the order in which its things fail.</summary>
    [Benchmark]
    public IReadOnlyList<Worry> TextToOrderOfWorry() => OrderOfWorry.Of(GardenReader.Read(Text, "bench.yaml").Value!);

    [Benchmark]
    public GardenBook TextToBook() => GardenReader.Read(Text, "bench.yaml").Value!;

    /// <summary>What every job is worth under the peak gusts of the members, which are known already.</summary>
    [Benchmark]
    public ValuedGarden Worths() => ValuedGarden.Of(book, winds);

    private static string Written()
    {
        var text = new StringBuilder("""
            garden: {id: bench, name: Bench, zone: America/New_York, units: us}
            people: [{id: ada, name: Ada, role: gardener}, {id: bo, name: Bo}]
            sites: [{id: home, name: Home, latitude: 26.64, longitude: -81.87, terrain: suburb}]
            areas: [{id: yard, name: Yard, site: home}]
            items:

            """);
        for (var i = 0; i < 1000; i++) text.Append("- {id: item-").Append(i).Append(", kind: ").Append(Kinds[i % Kinds.Length]).Append(", area: yard, count: ").Append(1 + i % 7).Append("}\n");
        return text.ToString();
    }
}
