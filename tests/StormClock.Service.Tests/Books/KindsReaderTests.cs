using StormClock.Service.Books.Kinds;

namespace StormClock.Service.Tests.Books;

/// <summary>A broken catalogue is refused with every fault and its line.</summary>
public class KindsReaderTests
{
    private const string Good =
        """
        materials: {rope: m, stake: each}
        kinds:
          drum:
            words: drum
            traits: [heavy]
            shape: body
            value_each_usd: 25
            typical: {height_m: 0.89, width_m: 0.58, base_m: 0.58, mass_kg: 10, drag: 0.8, surface: paving}
            jobs:
              - {kind: fill, minutes: 5, minutes_each: 4, people: 1}
              - {kind: strap, minutes: 12, minutes_each: 8.5, people: 2, class: carry, after: [fill], materials: {rope: 6, stake: 2}, caution: cover it, fallback: lay it down}
        crops:
          fig: {words: fig, ripens_off: false, keeps_days: 2, sheds_at_mps: 17}
        """;

    [Fact]
    public void Read_GoodText_GivesWhatIsWritten()
    {
        var read = CatalogueReader.Read(Good);

        Assert.Empty(read.Faults);
        var drum = read.Value!.Kinds["drum"];
        Assert.Equal((0.89, 10, 25), (drum.Typical.HeightM, drum.Typical.MassKg, drum.ValueEachUsd));
        Assert.Equal([5, 9, 13], new[] { 1, 2, 3 }.Select(drum.Jobs[0].Minutes));
        Assert.Equal(21, drum.Jobs[1].Minutes(2)); // 20.5, in whole minutes
        Assert.Equal([new("rope", 6, "m"), new("stake", 2, "each")], drum.Jobs[1].Materials);
        Assert.Equal([Core.Garden.JobKind.Fill], drum.Jobs[1].After);
        Assert.Equal(new Core.Garden.Crop("fig", "fig", false, 2, 17), read.Value.Crops["fig"]);
    }

    [Theory]
    [InlineData("mass_kg: 10", "mass_lb: 22", 8, "unknown key 'mass_lb'")]
    [InlineData("mass_kg: 10", "mass_kg: 10 kg", 8, "'mass_kg' of typical build of kind 'drum' must be a number")]
    [InlineData("mass_kg: 10", "mass_kg: -10", 8, "must be a number from 0 to 20000")]
    [InlineData("base_m: 0.58, ", "", 8, "lacks base_m, which the shape 'body' needs")]
    [InlineData(", surface: paving", "", 8, "lacks surface or friction")]
    [InlineData("surface: paving", "surface: pavings", 8, "did you mean 'paving'?")]
    [InlineData("shape: body", "shape: panel", 8, "lacks solidity")]
    [InlineData("shape: body", "shape: tree", 8, "lacks stem_m")]
    [InlineData("shape: body", "shape: stems", 8, "lacks held_to_mps")]
    [InlineData("shape: body", "shape: ball", 6, "is 'ball', which is not known")]
    [InlineData("    shape: body\n", "", 4, "has no 'shape'")]
    [InlineData("words: drum", "wods: drum", 4, "did you mean 'words'?")]
    [InlineData("[heavy]", "[heavy, round]", 5, "has 'round', which is not known")]
    [InlineData("value_each_usd: 25", "value_each_usd: cheap", 7, "must be a number")]
    [InlineData("kind: fill", "kind: untie", 10, "is 'untie', which is not known")]
    [InlineData("kind: fill", "kind: strap", 11, "is there twice")]
    [InlineData("minutes_each: 4, ", "", 10, "has no 'minutes_each'")]
    [InlineData("people: 2", "people: 3", 11, "must be a whole number from 1 to 2")]
    [InlineData("class: carry", "class: haul", 11, "is 'haul', which is not known")]
    [InlineData("after: [fill]", "after: [prune]", 11, "names 'prune', which is no job written above it")]
    [InlineData("rope: 6", "ropes: 6", 11, "did you mean 'rope'?")]
    [InlineData("rope: 6", "rope: 6 m", 11, "must be a number")]
    [InlineData("rope: m", "rope: ft", 1, "is no unit that materials are stored in")]
    [InlineData("  drum:", "  Drum:", 3, "must be made of lower-case letters")]
    [InlineData("ripens_off: false, ", "", 13, "has no 'ripens_off'")]
    [InlineData("ripens_off: false", "ripens_off: maybe", 13, "must be true or false")]
    [InlineData("sheds_at_mps: 17", "sheds_at_kt: 33", 13, "unknown key 'sheds_at_kt'")]
    [InlineData("crops:\n  fig:", "crop:\n  fig:", 12, "did you mean 'crops'?")]
    public void Read_OneThingWrong_NamesItWithItsLine(string right, string wrong, int line, string told)
    {
        Assert.Contains(right, Good);

        var read = CatalogueReader.Read(Good.Replace(right, wrong));

        Assert.Null(read.Value);
        Assert.Contains(read.Faults, fault => fault.Line == line && fault.Reason.Contains(told));
    }

    /// <summary>No key is known and then left unread.</summary>
    [Fact]
    public void Read_EveryTypicalKeyWithoutAFigure_IsAFaultEach()
    {
        foreach (var key in CatalogueKeys.Typical)
        {
            var read = CatalogueReader.Read(Good.Replace("{height_m: 0.89, width_m: 0.58, base_m: 0.58, mass_kg: 10, drag: 0.8, surface: paving}", $"{{{key}: blue}}"));
            Assert.Contains(read.Faults, fault => fault.Line == 8 && fault.Reason.Contains($"'{key}'") && fault.Reason.Contains("'blue'"));
        }
    }

    [Fact]
    public void Read_ManyThingsWrong_TellsAllInOrderOfLines()
    {
        var read = CatalogueReader.Read(Good.Replace("rope: m", "rope: yards").Replace("mass_kg: 10", "mass_kg: ten").Replace("keeps_days: 2", "keeps_days: two"));

        Assert.Equal([1, 8, 8, 11, 13], read.Faults.Select(fault => fault.Line)); // the mass is no number and lacking; the rope is not known
    }
}
