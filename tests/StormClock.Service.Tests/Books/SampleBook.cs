using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>A good book in few lines; tests spoil one line of it.</summary>
internal static class SampleBook
{
    public const string Good = """
        garden: {id: quay, name: Quay garden, zone: America/New_York, units: us}
        people:
          - id: ines
            name: Ines
            email: ines@example.org
            hours:
              - {days: [mon, tue], from: "17:30", to: "19:00"}
              - {date: 2027-09-22, from: "7:30", to: "18:00"}
            days_off: [2027-09-24]
            lift_kg: 14
          - {id: otto, name: Otto, ladder_alone: true}
        sites:
          - {id: home, name: Home, latitude: 30.1, longitude: -84.2, travel_minutes: {field: 9}, codes: [XQ001]}
          - {id: field, name: Field, latitude: 30.2, longitude: -84.3, terrain: open_farmland}
        areas:
          - {id: porch, name: Porch, site: home, exposure: sheltered}
          - {id: rows, name: Rows, site: field}
        stores:
          - {id: shed, site: home, floor_m2: 4}
        supplies:
          - {material: rope, quantity: 100, unit: ft}
        limits:
          ladder: {sustained: 18 mph, gust: 24 mph gust}
        items:
          - id: fig-pots
            kind: potted_tree
            area: porch
            count: 3
            mass: 40 lb
            value: 90
            endangers: [neighbour_window]
            jobs:
              - kind: tie
                minutes: 20
                materials:
                  - {material: rope, quantity: 8, unit: m}
              - kind: move
                minutes: 30
                people: 2
                after: [tie]
                store: {id: shed, floor_m2: 1.5}
                fallback: lay them in the lee of the steps
          - id: bean-rows
            kind: tall_crop
            area: rows
            count: 40
            jobs:
              - {kind: pick, minutes: 35}
              - {kind: bundle, minutes: 50, after: [bean-rows/pick]}
              - {kind: bundle, minutes: 10}
        """;

    /// <summary>A book that must be good, read without anything typical.</summary>
    public static GardenBook Read(string text)
    {
        var read = GardenReader.Read(text, "quay.yaml", null, MadeKinds.Bare);
        Assert.True(read.IsGood, string.Join("\n", read.Faults));
        return read.Value!;
    }

    /// <summary>The line, counted from 1, that begins with this text once blanks are dropped.</summary>
    public static int LineOf(string book, string beginning)
    {
        var lines = book.Split('\n');
        return Array.FindIndex(lines, line => line.TrimStart(' ', '-').StartsWith(beginning, StringComparison.Ordinal)) + 1;
    }
}
