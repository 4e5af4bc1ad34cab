using StormClock.Core.Advisories;

namespace StormClock.Core.Tests.Advisories;

public class AlertBearingsTests
{
    [Theory]
    [InlineData("Tropical Storm Watch", AlertBearing.TropicalStormWatch)]
    [InlineData("Tropical Storm Warning", AlertBearing.TropicalStormWarning)]
    [InlineData("Hurricane Watch", AlertBearing.HurricaneWatch)]
    [InlineData("Hurricane Warning", AlertBearing.HurricaneWarning)]
    [InlineData("Typhoon Warning", AlertBearing.HurricaneWarning)]
    [InlineData("Hurricane Force Wind Warning", AlertBearing.WindWarning)]
    [InlineData("High Wind Warning", AlertBearing.WindWarning)]
    [InlineData("Orange wind warning", AlertBearing.WindWarning)]
    [InlineData("Storm Warning", AlertBearing.WindWarning)]
    [InlineData("Severe Thunderstorm Warning", AlertBearing.WindWarning)]
    [InlineData("Winter Storm Warning", AlertBearing.Other)]
    [InlineData("Wind Chill Warning", AlertBearing.Other)]
    [InlineData("Wind Advisory", AlertBearing.Other)]
    [InlineData("High Wind Watch", AlertBearing.Other)]
    [InlineData("Flash Flood Warning", AlertBearing.Flood)]
    [InlineData("Storm Surge Warning", AlertBearing.Flood)]
    [InlineData("Flash Flood Emergency", AlertBearing.Flood)]
    [InlineData("Flood Watch", AlertBearing.Other)]
    [InlineData("Hurricane Local Statement", AlertBearing.Other)]
    [InlineData("Evacuation Immediate", AlertBearing.Evacuate)]
    [InlineData("Shelter In Place Warning", AlertBearing.Shelter)]
    [InlineData("Air Quality Alert", AlertBearing.Other)]
    public void Bearing_FromTheName_IsWhatItSays(string name, AlertBearing expected) =>
        Assert.Equal(expected, AlertBearings.Of(Alerts.Info(name)));

    [Theory]
    [InlineData("SAME", "TRW", AlertBearing.TropicalStormWarning)]
    [InlineData("NationalWeatherService", "HUA", AlertBearing.HurricaneWatch)]
    [InlineData("SAME", "EVI", AlertBearing.Evacuate)]
    [InlineData("house number", "TRW", AlertBearing.Other)]
    public void Bearing_FromTheCode_NeedsNoWord(string scheme, string code, AlertBearing expected) =>
        Assert.Equal(expected, AlertBearings.Of(Alerts.Info("Aviso", codes: [(scheme, code)])));

    [Fact]
    public void Bearing_OrderToLeaveOrShelter_OutranksTheEvent()
    {
        Assert.Equal(AlertBearing.Evacuate, AlertBearings.Of(Alerts.Info("Flood Warning", responses: [AlertResponse.Shelter, AlertResponse.Evacuate])));
        Assert.Equal(AlertBearing.Shelter, AlertBearings.Of(Alerts.Info("Tornado Warning", responses: [AlertResponse.Shelter])));
    }

    /// <summary>Issued a day or two before the wind: its shelter is for the hours of the wind.</summary>
    [Fact]
    public void Bearing_TropicalWarningThatAdvisesShelter_StaysAWarning()
    {
        Assert.Equal(AlertBearing.HurricaneWarning, AlertBearings.Of(Alerts.Info("Hurricane Warning", responses: [AlertResponse.Shelter])));
        Assert.Equal(AlertBearing.Evacuate, AlertBearings.Of(Alerts.Info("Hurricane Warning", responses: [AlertResponse.Evacuate])));
    }

    [Theory]
    [InlineData("THIS IS A TEST of the warning system", "", AlertBearing.Other)]
    [InlineData("", "THIS_MESSAGE_IS_FOR_TEST_PURPOSES_ONLY", AlertBearing.Other)]
    [InlineData("This is not a test", "Test your radio", AlertBearing.HurricaneWarning)]
    public void Bearing_TestToldInWordsOnly_IsNothing(string headline, string description, AlertBearing expected) =>
        Assert.Equal(expected, AlertBearings.Of(Alerts.Info("Hurricane Warning") with { Headline = headline, Description = description }));

    [Fact]
    public void Bearing_TestIssuedAsActual_IsNothing()
    {
        Assert.Equal(AlertBearing.Other, AlertBearings.Of(Alerts.Info("Evacuation", codes: [("SAME", "RWT")])));
        Assert.Equal(AlertBearing.Other, AlertBearings.Of(Alerts.Info("Required Monthly Test", responses: [AlertResponse.Shelter])));
    }

    [Fact]
    public void Strongest_OfSeveral_PutsAWarningOfTheWeakerWindAboveAWatchOfTheStronger() =>
        Assert.Equal(
            AlertBearing.TropicalStormWarning,
            AlertBearings.Strongest([AlertBearing.HurricaneWatch, AlertBearing.Flood, AlertBearing.TropicalStormWarning]));
}
