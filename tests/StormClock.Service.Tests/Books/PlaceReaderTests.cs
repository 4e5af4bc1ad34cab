using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>Survey date, heights and distances of places, doors of stores, and ladders.</summary>
public class PlaceReaderTests
{
    private static readonly (string Old, string New)[] Fuller =
    [
        ("units: us}", "units: us, surveyed: 2027-06-04}"),
        ("codes: [XQ001]", "codes: [XQ001], datum: NAVD88, ground: 5 ft 6 in"),
        ("exposure: sheltered", "exposure: sheltered, ground: -8 in, water: 120 ft, neighbour: 4 m, glass: 0 m"),
        ("floor_m2: 4", "floor_m2: 4, door: 32 in, raised: -1 ft"),
    ];

    private static string Full => Fuller.Aggregate(SampleBook.Good, (text, change) => text.Replace(change.Old, change.New));

    [Fact]
    public void Read_HeightsDistancesAndDoors_AreKeptInSi()
    {
        var book = SampleBook.Read(Full);

        Assert.Equal(new LocalDate(2027, 6, 4), book.Surveyed);
        Assert.Equal(("NAVD88", 1.6764), (book.Sites[0].Datum, book.Sites[0].GroundM));
        Assert.Equal((-0.2032, 36.576, 4.0, 0.0), (book.Areas[0].GroundM, book.Areas[0].WaterM, book.Areas[0].NeighbourM, book.Areas[0].GlassM));
        Assert.Equal((0.8128, -0.3048), (book.Stores[0].DoorM, book.Stores[0].RaisedM));
    }

    [Fact]
    public void Read_NothingOfThemWritten_KnowsNothing()
    {
        var book = SampleBook.Read(SampleBook.Good);

        Assert.Null(book.Surveyed);
        Assert.Equal((null, (double?)null), (book.Sites[0].Datum, book.Sites[0].GroundM));
        Assert.All(book.Areas, area => Assert.True(area is { GroundM: null, WaterM: null, NeighbourM: null, GlassM: null }));
        Assert.True(book.Stores[0] is { DoorM: null, RaisedM: null });
    }

    /// <summary>Refused only where heights are compared.</summary>
    [Fact]
    public void Read_GroundWithoutDatum_IsAllowed() => Assert.Equal(1.6764, SampleBook.Read(Full.Replace("datum: NAVD88, ", "")).Sites[0].GroundM);

    public static TheoryData<string, string, string, string[]> OneFault => new()
    {
        { "surveyed: 2027-06-04", "surveyed: last week", "garden:", ["a date such as 2027-09-22", "'last week'"] },
        { "datum: NAVD88", "datum: ", "{id: home", ["'datum' of site 'home' has no value"] },
        { "ground: 5 ft 6 in", "ground: 5.5", "{id: home", ["a length with its unit", "6 ft 2 in"] },
        { "ground: 5 ft 6 in", "ground: 9 km", "{id: home", ["unknown unit 'km'"] },
        { "ground: -8 in", "ground: -600 m", "{id: porch", ["between -500 and 6000 m"] },
        { "water: 120 ft", "water: -1 ft", "{id: porch", ["'water' of area 'porch'", "between 0 and 100000 m"] },
        { "neighbour: 4 m", "neighbour: -4 m", "{id: porch", ["'neighbour' of area 'porch'", "between 0 and 100000 m"] },
        { "glass: 0 m", "glass: near", "{id: porch", ["a length with its unit", "'near'"] },
        { "door: 32 in", "door: 2 in", "{id: shed", ["between 0.1 and 20 m"] },
        { "raised: -1 ft", "raised: -20 ft", "{id: shed", ["between -5 and 20 m"] },
        { "ladder_alone: true", "ladder: sometimes", "{id: otto", ["'sometimes', which is not known", "never, with_somebody, alone"] },
        { "ladder_alone: true", "ladder_alone: true, ladder: never", "{id: otto", ["the same thing twice", "keep 'ladder'"] },
    };

    [Theory]
    [MemberData(nameof(OneFault))]
    public void Read_OneFault_NamesLineAndMend(string good, string bad, string lineBegins, string[] words)
    {
        Assert.Contains(good, Full);
        var text = Full.Replace(good, bad);

        var fault = Assert.Single(GardenReader.Read(text, "quay.yaml").Faults);

        Assert.Equal(SampleBook.LineOf(text, lineBegins), fault.Line);
        Assert.All(words, word => Assert.Contains(word, fault.Reason));
    }

    [Theory]
    [InlineData("ladder_alone: true", true, false)]
    [InlineData("ladder_alone: false", false, false)]
    [InlineData("ladder: alone", true, false)]
    [InlineData("ladder: with_somebody", false, false)]
    [InlineData("ladder: never", false, true)]
    [InlineData("lift_kg: 20", false, false)]
    public void Read_Ladder_ByEitherKey(string written, bool alone, bool never)
    {
        var person = SampleBook.Read(SampleBook.Good.Replace("ladder_alone: true", written)).People[1];

        Assert.Equal((alone, never), (person.LadderAlone, person.NoLadder));
    }

    [Fact]
    public void Read_LadderWorkWhereNobodyGoesUp_IsAFault()
    {
        var text = SampleBook.Good.Replace("{kind: pick, minutes: 35}", "{kind: pick, minutes: 35, class: ladder, people: 2}").Replace("ladder_alone: true", "ladder: never");
        Assert.Single(SampleBook.Read(text).People, person => person.NoLadder);

        var fault = Assert.Single(GardenReader.Read(text.Replace("lift_kg: 14", "ladder: never"), "quay.yaml").Faults);

        Assert.Equal(SampleBook.LineOf(text, "{kind: pick"), fault.Line);
        Assert.Contains("nobody in the book goes up a ladder", fault.Reason);
    }
}
