using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>Catalogues made for tests, so that better typical figures change no test of the reader.</summary>
internal static class MadeKinds
{
    /// <summary>Every kind with its traits and nothing else that is typical.</summary>
    public static IReadOnlyDictionary<string, ItemKind> Bare { get; } = ItemKinds.All.ToDictionary(
        pair => pair.Key, pair => pair.Value with { Jobs = [], Typical = ItemBuild.Unknown, ValueEachUsd = 0, Shape = ItemShape.Fixed });

    /// <summary>The same, but a drum and a trellis about which something is known. Invented figures.</summary>
    public static IReadOnlyDictionary<string, ItemKind> Rich { get; } = new Dictionary<string, ItemKind>(Bare)
    {
        ["drum"] = Bare["drum"] with
        {
            Shape = ItemShape.Body,
            ValueEachUsd = 30,
            Typical = new() { HeightM = 0.9, WidthM = 0.6, BaseM = 0.55, MassKg = 9, MassWetKg = 10, HoldsL = 200, Filled = 0.5, Drag = 0.8, Surface = Surface.Paving },
            Jobs =
            [
                new(JobKind.Fill, 5, 4.5, 1, null, [], [], null, null),
                new(JobKind.Strap, 12, 8, 2, WorkClass.Carry, [new("strap", 2, "each"), new("cord", 1.5, "m")], [JobKind.Fill], "the rim is sharp", "leave it full and lay its lid indoors"),
            ],
        },
        ["trellis"] = Bare["trellis"] with
        {
            Shape = ItemShape.Panel,
            ValueEachUsd = 80,
            Typical = new() { HeightM = 1.8, Posts = 2, PostM = 0.07, PostDeepM = 0.5, Standing = Standing.OnPosts, Solidity = 0.3, PotHeightM = 0.4 },
            Jobs = [new(JobKind.Tie, 10, 10, 1, null, [], [], null, null)],
        },
        ["lamp"] = Bare["lamp"] with { Jobs = [new(JobKind.TakeDown, 4, 3, 1, WorkClass.Ladder, [], [], null, null)] },
    };

    /// <summary>A book in which only these lines of one item count.</summary>
    public static string Book(string itemLines, string units = "metric") => $$"""
        garden: {id: quay, name: Quay garden, zone: America/New_York, units: {{units}}}
        people:
          - {id: ines, name: Ines}
        sites:
          - {id: home, name: Home, latitude: 30.1, longitude: -84.2}
        areas:
          - {id: porch, name: Porch, site: home}
        items:
          - id: thing
            area: porch
        {{string.Concat(itemLines.Split('\n').Select(line => $"    {line}\n"))}}
        """;

    /// <summary>The item of such a book.</summary>
    public static Item Item(string itemLines, string units = "metric")
    {
        var read = GardenReader.Read(Book(itemLines, units), "quay.yaml", null, Rich);
        Assert.True(read.IsGood, string.Join("\n", read.Faults));
        return read.Value!.Items[0];
    }
}
