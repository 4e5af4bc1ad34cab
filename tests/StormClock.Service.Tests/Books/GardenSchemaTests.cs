using System.Text.Json;
using System.Text.RegularExpressions;
using StormClock.Service.Books;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Books;

/// <summary>The schema that editors use says what the reader says.</summary>
public class GardenSchemaTests
{
    private static readonly JsonElement Schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "schema", "garden.schema.json"))).RootElement;

    private static JsonElement Part(string name) => name.Length == 0 ? Schema : Schema.GetProperty("$defs").GetProperty(name);

    public static TheoryData<string, string[]> Keys => new()
    {
        { "", GardenKeys.Book },
        { "garden", GardenKeys.Garden },
        { "person", GardenKeys.Person },
        { "hours", GardenKeys.Hours },
        { "site", GardenKeys.Site },
        { "area", GardenKeys.Area },
        { "store", GardenKeys.Store },
        { "material", GardenKeys.Material },
        { "limits", [.. Tokens.Classes.Keys] },
        { "limit", GardenKeys.Limit },
        { "item", GardenKeys.Item },
        { "job", GardenKeys.Job },
        { "jobStore", GardenKeys.JobStore },
    };

    [Theory]
    [MemberData(nameof(Keys))]
    public void Schema_OfEachPart_HasTheReadersKeysAndNoOthers(string part, string[] keys)
    {
        Assert.Equal(keys.Order(), Part(part).GetProperty("properties").EnumerateObject().Select(property => property.Name).Order());
        Assert.False(Part(part).GetProperty("additionalProperties").GetBoolean());
    }

    public static TheoryData<string, string, string[]> Words => new()
    {
        { "garden", "units", [.. Tokens.Units.Keys] },
        { "garden", "language", [.. Tokens.Languages.Keys] },
        { "garden", "clock", [.. Tokens.Clocks.Keys] },
        { "person", "language", [.. Tokens.Languages.Keys] },
        { "person", "clock", [.. Tokens.Clocks.Keys] },
        { "person", "units", [.. Tokens.Units.Keys] },
        { "person", "role", [.. Tokens.Roles.Keys] },
        { "site", "terrain", [.. Tokens.Terrains.Keys] },
        { "area", "exposure", [.. Tokens.Exposures.Keys] },
        { "person", "ladder", [.. Tokens.Ladders.Keys] },
        { "item", "standing", [.. Tokens.Standings.Keys] },
        { "item", "stands_on", [.. Tokens.Surfaces.Keys] },
        { "item", "crop", [.. Crops.All.Keys] },
        { "material", "unit", [.. MaterialUnits.All.Keys] },
        { "item", "kind", [.. ItemKinds.All.Keys] },
        { "job", "kind", [.. Tokens.JobKinds.Keys] },
        { "job", "class", [.. Tokens.Classes.Keys] },
        { "job", "undo", [.. Tokens.UndoKinds.Keys, "none"] },
    };

    [Theory]
    [MemberData(nameof(Words))]
    public void Schema_OfEachChoice_HasTheReadersWords(string part, string key, string[] words) =>
        Assert.Equal(words.Order(), Part(part).GetProperty("properties").GetProperty(key).GetProperty("enum").EnumerateArray().Select(word => word.ToString()).Order());

    /// <summary>Leaving out a key that the schema requires must be a fault of the reader, and the other way round.</summary>
    [Theory]
    [InlineData("garden", "name", "name: Quay garden, ")]
    [InlineData("person", "name", "\n    name: Ines")]
    [InlineData("site", "latitude", "latitude: 30.1, ")]
    [InlineData("area", "site", ", site: home, exposure: sheltered")]
    [InlineData("store", "site", ", site: home, floor_m2: 4")]
    [InlineData("material", "quantity", ", quantity: 8")]
    [InlineData("item", "count", "\n    count: 3")]
    [InlineData("job", "kind", "kind: pick, ")]
    public void Schema_RequiredKey_IsRequiredByTheReader(string part, string key, string written)
    {
        Assert.Contains(key, Part(part).GetProperty("required").EnumerateArray().Select(name => name.GetString()));
        Assert.Contains(written, SampleBook.Good);

        Assert.Contains(GardenReader.Read(SampleBook.Good.Replace(written, ""), "quay.yaml", null, MadeKinds.Bare).Faults, fault => fault.Reason.Contains($"has no '{key}'"));
    }

    /// <summary>Numbers of an item: the schema's bounds are the reader's, and a step beyond is refused by both.</summary>
    [Fact]
    public void Schema_BoundsOfItemNumbers_AreTheReaders()
    {
        foreach (var property in Part("item").GetProperty("properties").EnumerateObject())
        {
            if (property.Name == "count" || NumberOf(property.Value) is not { } number) continue;

            var (least, most) = (number.GetProperty("minimum").GetDouble(), number.GetProperty("maximum").GetDouble());
            Assert.True(Takes(property.Name, least) && Takes(property.Name, most), property.Name);
            Assert.False(Takes(property.Name, least - 0.0005), property.Name);
            Assert.False(Takes(property.Name, most + 1), property.Name);
        }
    }

    private static JsonElement? NumberOf(JsonElement property)
    {
        if (property.TryGetProperty("maximum", out _)) return property;
        if (!property.TryGetProperty("oneOf", out var ways)) return null;
        return ways.EnumerateArray().Where(way => way.TryGetProperty("maximum", out _)).Select(way => (JsonElement?)way).FirstOrDefault();
    }

    private static bool Takes(string key, double value)
    {
        var text = MadeKinds.Book($"kind: other\ncount: 1\nholds: 9 l\n{(key is "ripe" or "mature" or "harvest_value" ? "crop: tomato\n" : "")}{key}: {ItemText.Number(value)}");
        return !GardenReader.Read(text, "quay.yaml").Faults.Any(fault => fault.Reason.StartsWith($"'{key}'", StringComparison.Ordinal));
    }

    /// <summary>Quantities as people write them: what the schema's pattern lets through the reader takes, and the other way round.</summary>
    [Theory]
    [InlineData("height", "1.8 m", true)]
    [InlineData("height", "6 ft 2 in", true)]
    [InlineData("height", "35cm", true)]
    [InlineData("height", "1,8 m", false)]
    [InlineData("height", "6 yd", false)]
    [InlineData("mass_wet", "40 lb", true)]
    [InlineData("mass_wet", "40 stone", false)]
    [InlineData("holds", "55 gal", true)]
    [InlineData("holds", "55", false)]
    [InlineData("tie", "110 lbf", true)]
    [InlineData("tie", "110 lb", false)]
    [InlineData("held_to", "45 mph gust", true)]
    [InlineData("held_to", "45 mph sustained", false)]
    [InlineData("solidity", "40 %", true)]
    [InlineData("solidity", "40 percent", false)]
    public void Schema_QuantityInWords_IsTakenAsByTheReader(string key, string written, bool good)
    {
        var property = Part("item").GetProperty("properties").GetProperty(key);
        var ways = property.TryGetProperty("oneOf", out var several) ? several.EnumerateArray().ToList() : [property];
        var patterns = ways.Where(way => way.TryGetProperty("pattern", out _)).Select(way => way.GetProperty("pattern").GetString()!);

        Assert.Equal(good, patterns.Any(pattern => Regex.IsMatch(written, pattern)));
        Assert.Equal(good, GardenReader.Read(MadeKinds.Book($"kind: other\ncount: 1\n{key}: {written}"), "quay.yaml").IsGood);
    }

    [Fact]
    public void PracticeGardens_EveryKey_IsInTheSchema()
    {
        var all = Keys.SelectMany(row => row.Data.Item2).ToHashSet();
        foreach (var path in ConfigFiles.PracticeGardens)
        {
            var faults = new FaultList();
            var unknown = KeysIn(YamlTreeReader.Read(File.ReadAllText(path), faults)!).Where(key => !all.Contains(key)).ToList();
            Assert.False(faults.Any);
            Assert.Empty(unknown);
        }
    }

    /// <summary>All keys, but for the names of other sites under travel_minutes.</summary>
    private static IEnumerable<string> KeysIn(YamlNode node) => node switch
    {
        YamlMap map => map.Entries.SelectMany(entry => entry.Key == "travel_minutes" ? [entry.Key] : KeysIn(entry.Value).Prepend(entry.Key)),
        YamlList list => list.Entries.SelectMany(KeysIn),
        _ => [],
    };
}
