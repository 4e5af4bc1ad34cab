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
}
