using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Books;
using StormClock.Service.Messages;
using StormClock.Service.Tests.Books;
using StormClock.Service.Wording;

namespace StormClock.Service.Tests.Wording;

/// <summary>Each person is spoken to in their language, by their clock and in their units.</summary>
public class SpeechTests
{
    private const string GardenLine = "units: us}";

    private static GardenBook Book(string garden, string person)
    {
        var text = SampleBook.Good.Replace(GardenLine, $"units: us{garden}}}", StringComparison.Ordinal).Replace("{id: otto, name: Otto,", $"{{id: otto, name: Otto{person},", StringComparison.Ordinal);
        var read = GardenReader.Read(text, "quay.yaml");
        Assert.True(read.IsGood, string.Join('\n', read.Faults));
        return read.Value!;
    }

    [Theory]
    [InlineData("", "", Language.English, ClockForm.Hours24, UnitSystem.UsCustomary)]
    [InlineData(", language: es, clock: 12", "", Language.Spanish, ClockForm.Hours12, UnitSystem.UsCustomary)]
    [InlineData(", language: es", ", language: en", Language.English, ClockForm.Hours24, UnitSystem.UsCustomary)]
    [InlineData("", ", language: es, clock: 12, units: metric", Language.Spanish, ClockForm.Hours12, UnitSystem.Metric)]
    public void Of_Person_IsWhatTheBookSays(string garden, string person, Language language, ClockForm clock, UnitSystem units)
    {
        var book = Book(garden, person);
        Assert.Equal(new(language, clock, units), Speech.Of(book.People[1], book.Units));
        var again = GardenReader.Read(GardenWriter.Write(book), "quay.yaml").Value!;
        Assert.Equal(Speech.Of(book.People[1], book.Units), Speech.Of(again.People[1], again.Units));
        Assert.Equal(Speech.Of(book), Speech.Of(again));
    }

    [Theory]
    [InlineData("language: fr", "language")]
    [InlineData("clock: 13", "clock")]
    [InlineData("units: imperial", "units")]
    public void Read_ChoiceThatIsNone_IsRefusedByName(string given, string key)
    {
        var read = GardenReader.Read(SampleBook.Good.Replace("{id: otto, name: Otto,", $"{{id: otto, name: Otto, {given},", StringComparison.Ordinal), "quay.yaml");
        Assert.Contains(key, Assert.Single(read.Faults).Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("THESSALY advisory 14", "THESSALY, advertencia n.º 14")]
    [InlineData("THESSALY public advisory 14A", "THESSALY, advertencia pública n.º 14A")]
    [InlineData("point forecast by NWS", "pronóstico para el lugar, de NWS")]
    [InlineData("leave-by note by keeper", "nota de keeper: hora de salir")]
    [InlineData("Hurricane Warning", "aviso de huracán [Hurricane Warning]")]
    [InlineData("Cancel of Tropical Storm Watch", "fin de: vigilancia de tormenta tropical [Tropical Storm Watch]")]
    [InlineData("Aviso de Huracán", "Aviso de Huracán")]
    [InlineData("", "el último pronóstico")]
    public void Source_InSpanish_IsKnownByTheFormOfItsName(string source, string expected) =>
        Assert.Equal(expected, ReasonWords.Source(new(StageCause.None, source, null), Speeches.Spanish, new(DateTimeZone.Utc, default, Speeches.Spanish)));

    [Theory]
    [InlineData("Ada", "Ada")]
    [InlineData("Ada,Bo", "Ada y Bo")]
    [InlineData("Ada,Bo,Inés", "Ada, Bo e Inés")]
    [InlineData("Ada,Hilda", "Ada e Hilda")]
    [InlineData("Ada,Hiedra", "Ada y Hiedra")]
    [InlineData("Ada,Yara", "Ada y Yara")]
    [InlineData("Ada,H", "Ada y H")]
    public void Together_InSpanish_Reads(string names, string expected) => Assert.Equal(expected, Words.Together(names.Split(','), Speeches.Spanish));

    [Theory]
    [InlineData(0.3048, "m", "1 pie")]
    [InlineData(3, "m", "10 pies")]
    [InlineData(1, "bag", "1 saco")]
    [InlineData(2, "bag", "2 sacos")]
    public void Amount_InSpanish_Reads(double quantity, string unit, string expected) =>
        Assert.Equal(expected, Amounts.Of(quantity, unit, Speeches.Spanish).Replace(Plain.Unbroken, ' '));
}
