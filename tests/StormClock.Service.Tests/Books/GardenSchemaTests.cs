using System.Text.Json;
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
        { "person", "role", [.. Tokens.Roles.Keys] },
        { "site", "terrain", [.. Tokens.Terrains.Keys] },
        { "area", "exposure", [.. Tokens.Exposures.Keys] },
        { "material", "unit", [.. MaterialUnits.All.Keys] },
        { "item", "kind", [.. ItemKinds.All.Keys] },
        { "job", "kind", [.. Tokens.JobKinds.Keys] },
        { "job", "class", [.. Tokens.Classes.Keys] },
        { "job", "undo", [.. Tokens.UndoKinds.Keys, "none"] },
    };

    [Theory]
    [MemberData(nameof(Words))]
    public void Schema_OfEachChoice_HasTheReadersWords(string part, string key, string[] words) =>
        Assert.Equal(words.Order(), Part(part).GetProperty("properties").GetProperty(key).GetProperty("enum").EnumerateArray().Select(word => word.GetString()).Order());

    /// <summary>Leaving out a key that the schema requires must be a fault of the reader, and the other way round.</summary>
    [Theory]
    [InlineData("garden", "name", "name: Quay garden, ")]
    [InlineData("person", "name", "\n    name: Ines")]
    [InlineData("site", "latitude", "latitude: 30.1, ")]
    [InlineData("area", "site", ", site: home, exposure: sheltered")]
    [InlineData("store", "site", ", site: home, floor_m2: 4")]
    [InlineData("material", "quantity", ", quantity: 8")]
    [InlineData("item", "count", "\n    count: 3")]
    [InlineData("job", "minutes", ", minutes: 35")]
    public void Schema_RequiredKey_IsRequiredByTheReader(string part, string key, string written)
    {
        Assert.Contains(key, Part(part).GetProperty("required").EnumerateArray().Select(name => name.GetString()));
        Assert.Contains(written, SampleBook.Good);

        Assert.Contains(GardenReader.Read(SampleBook.Good.Replace(written, ""), "quay.yaml").Faults, fault => fault.Reason.Contains($"has no '{key}'"));
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
