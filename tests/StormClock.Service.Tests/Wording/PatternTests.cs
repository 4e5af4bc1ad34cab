using StormClock.Service.Wording;

namespace StormClock.Service.Tests.Wording;

public class PatternTests
{
    [Theory]
    [InlineData("Stop by {time}", "Stop by noon")]
    [InlineData("{time}, {time}", "noon, noon")]
    [InlineData("the day's work", "the day's work")]
    [InlineData("", "")]
    public void Fill_Arguments_StandInTheirPlaces(string pattern, string expected) => Assert.Equal(expected, Pattern.Parse(pattern).Fill([("time", "noon")]));

    [Theory]
    [InlineData(0, "0 jobs are late")]
    [InlineData(1, "one job is late")]
    [InlineData(2, "2 jobs are late")]
    [InlineData(1000, "1000 jobs are late")]
    public void Fill_Plural_ChoosesByTheNumber(int count, string expected) =>
        Assert.Equal(expected, Pattern.Parse("{count, plural, one {one job is late} other {# jobs are late}}").Fill([("count", count)]));

    /// <summary>What is put in is never read as a pattern again.</summary>
    [Fact]
    public void Fill_ValueWithBraces_StaysAsItIs() => Assert.Equal("{x} and #", Pattern.Parse("{a} and {b}").Fill([("a", "{x}"), ("b", "#")]));

    [Fact]
    public void Fill_WithoutAnArgument_IsABug() => Assert.Throws<ArgumentException>(() => Pattern.Parse("{time}").Fill([]));

    [Theory]
    [InlineData("a } b")]
    [InlineData("a { b")]
    [InlineData("{Time}")]
    [InlineData("{count, plural, one {x}}")]
    [InlineData("{count, plural, one {x} many {y}}")]
    [InlineData("{count, select, one {x} other {y}}")]
    public void Parse_WhatIsNoPattern_IsRefused(string text) => Assert.Throws<FormatException>(() => Pattern.Parse(text));

    [Theory]
    [InlineData("NINETY advisory 1", "NINETY", "1")]
    [InlineData("Cancel of Hurricane Warning", null, null)]
    public void ValuesOf_AText_GivesWhatWouldMakeIt(string text, string? name, string? number) =>
        Assert.Equal(name is null ? null : [("name", name), ("number", number!)], Pattern.Parse("{name} advisory {number}").ValuesOf(text)?.Select(pair => (pair.Name, (string)pair.Value)).OrderBy(pair => pair.Name));
}
