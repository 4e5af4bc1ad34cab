using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;

namespace StormClock.Core.Tests.Formats;

public class MessageReaderTests
{
    [Fact]
    public void Reading_CycloneText_GivesACycloneAdvisory() =>
        Assert.IsType<CycloneAdvisory>(MessageReader.Read(Encoding.UTF8.GetBytes(AdvisoryText.Invented)).Value);

    [Fact]
    public void Reading_Cap_GivesAnAlert()
    {
        const string xml = """
            <alert xmlns="urn:oasis:names:tc:emergency:cap:1.2"><identifier>1</identifier><sender>a</sender>
            <sent>2027-09-21T15:00:00Z</sent><status>Actual</status><msgType>Alert</msgType></alert>
            """;
        Assert.IsType<AlertMessage>(MessageReader.Read(Encoding.UTF8.GetBytes(xml)).Value);
    }

    [Theory]
    [InlineData("<html><body>404</body></html>", "an HTML page")]
    [InlineData("<kml/>", "XML document <kml>")]
    [InlineData("", "an empty file")]
    [InlineData("Dear gardener", "a text of another kind")]
    public void Reading_AnythingElse_SaysWhatItIs(string text, string reason) =>
        Assert.Contains(reason, MessageReader.Read(Encoding.UTF8.GetBytes(text)).Faults[0].Reason);

    /// <summary>Digits of another script are no numbers here, though they count as digits elsewhere.</summary>
    [Fact]
    public void Reading_DigitsOfAnotherScript_IsRefusedWithItsLine()
    {
        var text = AdvisoryText.Invented.Replace("MAX SUSTAINED WINDS 1", "MAX SUSTAINED WINDS \u0661", StringComparison.Ordinal).Replace("MAX SUSTAINED WINDS  ", "MAX SUSTAINED WINDS \u0661", StringComparison.Ordinal).Replace("MAX WIND 1", "MAX WIND \u0661", StringComparison.Ordinal);
        Assert.NotEqual(AdvisoryText.Invented, text);
        Assert.Contains(MessageReader.Read(Encoding.UTF8.GetBytes(text)).Faults, fault => fault.Line > 0);
    }

    /// <summary>A text with several messages is no single one, and says so.</summary>
    [Fact]
    public void Reading_SeveralAsOne_IsRefusedWithTheirNumber() =>
        Assert.Contains("3 messages", MessageReader.Read(Encoding.UTF8.GetBytes(InventedMessages.Statement)).Faults[0].Reason);

    [Theory]
    [InlineData("""{"activeStorms":[]}""", "a list of messages")]
    [InlineData("""{"type":"FeatureCollection","features":[{"properties":{"areaDesc":"Here"}}]}""", "a list of messages")]
    [InlineData("""{"type":"FeatureCollection","features":[]}""", "an empty list")]
    [InlineData("""{"properties":{"forecastGridData":"https://weather.example/grid"}}""", "an index")]
    [InlineData("""{"properties":{"periods":[{"name":"Friday Night"}]}}""", "by day and night")]
    [InlineData("""{"a":1}""", "JSON of another kind")]
    [InlineData("""{"a":""", "well-formed")]
    public void Reading_OtherJson_SaysWhatItIs(string text, string reason) =>
        Assert.Contains(reason, MessageReader.Read(Encoding.UTF8.GetBytes(text)).Faults[0].Reason);
}
