using System.Text;
using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;

namespace StormClock.Core.Tests.Formats;

public class FeedIndexReaderTests
{
    private const string Alert = """
        <c:identifier>urn:example:81</c:identifier><c:sender>wind@example.org</c:sender>
        <c:sent>2027-09-21T15:00:00-04:00</c:sent><c:status>Actual</c:status><c:msgType>Alert</c:msgType>
        <c:info><c:event>Gale Warning</c:event><c:description>5 &lt; 6 &amp; à</c:description></c:info>
        """;

    /// <summary>The prefixes are declared outside of the alert, and are others than usual.</summary>
    private const string Atom = $"""
        <?xml version="1.0" encoding="UTF-8"?>
        <a:feed xmlns:a="http://www.w3.org/2005/Atom" xmlns:c="urn:oasis:names:tc:emergency:cap:1.2" xmlns:other="urn:other">
          <a:title>Invented warnings</a:title><a:updated>2027-09-21T20:00:00Z</a:updated><a:author><a:name>Office</a:name></a:author>
          <a:entry><a:id>one</a:id><a:title>Carried</a:title><a:updated>2027-09-21T19:00:00Z</a:updated>
            <a:content type="text/xml"><c:alert>{Alert}</c:alert></a:content></a:entry>
          <a:entry><a:id>two</a:id><other:id>wrong</other:id><a:title>Linked</a:title>
            <a:link href="https://example.org/page" type="text/html"/><a:link href="https://example.org/self" rel="self"/>
            <a:link href="https://example.org/plain"/><a:link href="https://example.org/two.cap" type="application/cap+xml"/></a:entry>
          <a:entry><a:id>three</a:id><a:title>Flat</a:title><c:event>Gale Warning</c:event><c:status>Actual</c:status>
            <c:geocode><valueName>UGC</valueName><value>NCZ095</value></c:geocode></a:entry>
        </a:feed>
        """;

    [Fact]
    public void Reading_Atom_GivesMessageLinkOrNeither()
    {
        var list = ReadGood(Atom);
        Assert.Equal(("Invented warnings", Instant.FromUtc(2027, 9, 21, 20, 0)), (list.Title, list.Updated));
        Assert.Equal(["one 2027-09-21T19:00:00Z", "two", "three"], list.Entries.Select(entry => entry.Id));
        Assert.Equal([null, "https://example.org/two.cap", null], list.Entries.Select(entry => entry.Link?.ToString()));
        Assert.Equal([false, true, true], list.Entries.Select(entry => entry.Message.IsEmpty));

        var alert = Assert.IsType<AlertMessage>(MessageReader.Read(list.Entries[0].Message).Value);
        Assert.Equal(("urn:example:81", "5 < 6 & à"), (alert.Identifier, alert.Infos[0].Description));
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("iso-8859-1")]
    public void Reading_OtherEncodings_HonoursMarkAndDeclaration(string encoding)
    {
        var code = Encoding.GetEncoding(encoding);
        byte[] bytes = [.. code.GetPreamble(), .. code.GetBytes(Atom.Replace("UTF-8", encoding))];
        Assert.True(FeedIndexReader.IsList(bytes));
        var message = FeedIndexReader.Read(bytes).Value!.Entries[0].Message;
        Assert.EndsWith("à", Assert.IsType<AlertMessage>(MessageReader.Read(message).Value).Infos[0].Description);
    }

    /// <summary>Long words are copied in pieces; no sign of two halves may be torn, wherever a piece ends.</summary>
    [Fact]
    public void Reading_LongTextOfSignsInTwoHalves_KeepsThemWhole()
    {
        for (var shift = 0; shift < 3; shift++)
        {
            var words = new string('x', shift) + string.Concat(Enumerable.Repeat("\U0001F300", 10_000));
            var message = ReadGood(Atom.Replace("5 &lt; 6 &amp; à", words)).Entries[0].Message;
            Assert.Equal(words, Assert.IsType<AlertMessage>(MessageReader.Read(message).Value).Infos[0].Description);
        }
    }

    /// <summary>An alert is cut out of the very bytes of a list in UTF-8; what could lead the search for its ends astray must not.</summary>
    [Theory]
    [InlineData("plain", "")]
    [InlineData("a mark first", "\uFEFF")]
    [InlineData("an end in a remark, in a section and in an attribute", "", "<c:headline x=\"&lt;/c:alert>\"><![CDATA[</c:alert>]]></c:headline><!-- </c:alert> -->")]
    [InlineData("signs of two to four bytes before it on its line", "", "<c:headline>ä</c:headline>", "<a:author><a:name>ä€\U0001F300</a:name></a:author>")]
    [InlineData("blanks within its end", "", "", "", "</c:alert \n >")]
    [InlineData("ends of lines of other systems", "", "<c:headline>a\r\nb\rc</c:headline>\r\n\r", "\r\n\r\n\r")]
    public void Reading_AlertInAList_IsTheSameCutOutOrCopied(string what, string mark, string inside = "", string before = "", string end = "</c:alert>")
    {
        var text = Atom.Replace("<c:alert>", before + "<c:alert>").Replace("<c:info>", inside + "<c:info>").Replace("</c:alert>", end).Replace("encoding=\"UTF-8\"", "");
        var cut = FeedIndexReader.Read(Encoding.UTF8.GetBytes(mark + text)).Value!.Entries[0].Message;
        var copied = FeedIndexReader.Read((byte[])[.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)]).Value!.Entries[0].Message;
        var one = Assert.IsType<AlertMessage>(MessageReader.Read(cut).Value);
        Assert.Equal(("urn:example:81", "5 < 6 & à", what), (one.Identifier, one.Infos[0].Description, what));
        Assert.Equal(System.Text.Json.JsonSerializer.Serialize(MessageReader.Read(copied).Value as AlertMessage), System.Text.Json.JsonSerializer.Serialize(one));
    }

    [Fact]
    public void Reading_AlertThatStandsAlone_IsAPartOfTheListItself()
    {
        var alert = $"<alert xmlns='urn:oasis:names:tc:emergency:cap:1.2' >\n<!-- kept -->{Alert.Replace("c:", "")} </alert>";
        var bytes = Encoding.UTF8.GetBytes($"<feed xmlns='http://www.w3.org/2005/Atom' xmlns:x='urn:x'><entry><content>\n {alert}</content></entry><entry><content>{alert}</content></entry></feed>");
        foreach (var entry in FeedIndexReader.Read(bytes).Value!.Entries)
        {
            Assert.Equal(alert, Encoding.UTF8.GetString(entry.Message.Span));
            Assert.True(System.Runtime.InteropServices.MemoryMarshal.TryGetArray(entry.Message, out var part) && part.Array == bytes);
        }
    }

    [Fact]
    public void Reading_EntryChanged_ChangesItsId() =>
        Assert.NotEqual(ReadGood(Atom).Entries[0].Id, ReadGood(Atom.Replace("T19:00:00Z", "T19:30:00Z")).Entries[0].Id);

    [Theory]
    [InlineData("<rss version='2.0'><channel><title>t</title></channel></rss>")]
    [InlineData("<feed xmlns='http://www.w3.org/2005/Atom'/>")]
    [InlineData("{\"type\":\"FeatureCollection\",\"features\":[]}")]
    [InlineData("\uFEFF{\"activeStorms\":[]}")]
    public void Reading_ListWithoutEntries_IsGood(string text) => Assert.Empty(ReadGood(text).Entries);

    [Fact]
    public void Reading_Rss_ReadsMailTimesLinksAndWrittenOutAlerts()
    {
        var list = ReadGood($"""
            <rss version="2.0"><channel><image><title>Logo</title><url>x</url></image><title>Invented</title><lastBuildDate>Tue, 21 Sep 2027 15:30 EDT</lastBuildDate>
            <item><title>a</title><link>https://example.org/a.xml</link><guid>A</guid><pubDate>Tue, 21 Sep 2027 15:00:00 -0400</pubDate></item>
            <item><title>b</title><link>page.html</link><enclosure url="https://example.org/b.cap" type="application/cap+xml"/></item>
            <item><title>c</title><guid>C</guid><description><![CDATA[<c:alert xmlns:c="urn:oasis:names:tc:emergency:cap:1.2">{Alert}</c:alert>]]></description></item>
            <item><title>d</title><link>javascript:alert(1)</link><guid>D</guid></item>
            </channel></rss>
            """);
        Assert.Equal(("Invented", Instant.FromUtc(2027, 9, 21, 19, 30)), (list.Title, list.Updated));
        Assert.Equal(["A 2027-09-21T19:00:00Z", "https://example.org/b.cap", "C", "D"], list.Entries.Select(entry => entry.Id));
        Assert.Equal(["https://example.org/a.xml", "https://example.org/b.cap", null, null], list.Entries.Select(entry => entry.Link?.ToString()));
        Assert.IsType<AlertMessage>(MessageReader.Read(list.Entries[2].Message).Value);
    }

    [Fact]
    public void Reading_EmptyPictureBeforeAnItem_DoesNotSwallowIt() =>
        Assert.Equal("A", Assert.Single(ReadGood("<rss><channel><image/><item><title>a</title><guid>A</guid></item></channel></rss>").Entries).Id);

    [Fact]
    public void Reading_BulletinInRss_DecodesItsEntitiesOnce()
    {
        const string text = "WTNT24 KXXX 210900\n\nSTORM ADVISORY A &amp; B &lt;C&gt; &amp;amp;";
        var entry = Assert.Single(ReadGood($"<rss><channel><item><title>t</title><description>Issued <![CDATA[<pre>{text}</pre>]]></description></item></channel></rss>").Entries);
        Assert.Equal("WTNT24 KXXX 210900\n\nSTORM ADVISORY A & B <C> &amp;", Encoding.UTF8.GetString(entry.Message.Span));
    }

    [Fact]
    public void Reading_EnvelopeWithTwoAlerts_GivesBoth()
    {
        var envelope = $"""
            <EDXLDistribution xmlns="urn:oasis:names:tc:emergency:EDXL:DE:1.0" xmlns:c="urn:oasis:names:tc:emergency:cap:1.2"><dateTimeSent>2027-09-21T20:00:00Z</dateTimeSent>
            <contentObject><contentDescription>x</contentDescription><xmlContent><embeddedXMLContent><c:alert>{Alert}</c:alert></embeddedXMLContent></xmlContent></contentObject>
            <contentObject><xmlContent><embeddedXMLContent><c:alert>{Alert}</c:alert></embeddedXMLContent></xmlContent></contentObject></EDXLDistribution>
            """;
        Assert.All(ReadGood(envelope).Entries, entry => Assert.True(MessageReader.Read(entry.Message).IsGood));
        Assert.Equal(2, ReadGood(envelope).Entries.Count);
    }

    [Theory]
    [InlineData("<!DOCTYPE feed [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><feed xmlns='http://www.w3.org/2005/Atom'>&e;</feed>")]
    [InlineData("<html/>")]
    [InlineData("<feed xmlns='urn:other'/>")]
    [InlineData("<alert xmlns='urn:oasis:names:tc:emergency:cap:1.2'/>")]
    [InlineData("{\"type\":\"Feature\"}")]
    [InlineData("{\"properties\":{\"features\":[]}}")]
    [InlineData("[]")]
    [InlineData("")]
    [InlineData("WTNT24 KNHC 280247")]
    public void Asking_WhatIsNoList_SaysNo(string text)
    {
        Assert.False(FeedIndexReader.IsList(Encoding.UTF8.GetBytes(text)));
        Assert.False(FeedIndexReader.Read(Encoding.UTF8.GetBytes(text)).IsGood);
    }

    /// <summary>A list broken off must not read like a short list.</summary>
    [Theory]
    [InlineData("</a:feed>", "")]
    [InlineData("<a:id>two</a:id>", "<a:id>&two;</a:id>")]
    public void Reading_ListBrokenOff_IsAFault(string good, string bad) => Assert.False(Read(Atom.Replace(good, bad)).IsGood);

    [Theory]
    [InlineData("""{"features":[{"properties":{"messageType":"Alert","id":"1"}}]""")]
    [InlineData("""{"features":[{"properties":{"messageType":"Alert","id":"1"}},""")]
    [InlineData("""{"features":[{"properties":{"station":"KXXX"}}]}""")]
    [InlineData("""{"activeStorms":[{"id":"al012027"}""")]
    [InlineData("""{"activeStorms":[{"id":"\ud800","forecastAdvisory":{"advNum":"1","url":"https://example.org/a"}}]}""")]
    [InlineData("""{"\ud800abcdefg":1,"activeStorms":[]}""")]
    [InlineData("""{"\ud800abcdefg":1,"features":[]}""")]
    public void Reading_JsonBrokenOffOrOfOtherThings_IsAFault(string text) => Assert.False(Read(text).IsGood);

    [Fact]
    public void Reading_TooManyOrTooLarge_IsRefusedWholeAndNotCutShort()
    {
        var many = string.Concat(Enumerable.Repeat("<item/>", FeedIndexReader.MostEntries + 1));
        Assert.Contains("more than", Assert.Single(Read($"<rss><channel>{many}</channel></rss>").Faults).Reason);
        Assert.Contains("32 MB", Assert.Single(FeedIndexReader.Read(new byte[FeedIndexReader.MostBytes + 1]).Faults).Reason);
    }

    [Fact]
    public void Reading_ElementsVeryDeep_IsRefused()
    {
        var deep = string.Concat(Enumerable.Repeat("<c:a>", 70_000)) + string.Concat(Enumerable.Repeat("</c:a>", 70_000));
        Assert.Contains("deep", Assert.Single(Read(Atom.Replace("Gale Warning", deep)).Faults).Reason);
    }

    [Fact]
    public void Reading_SpoiltAtRandom_NeverThrows()
    {
        byte[][] good = [Encoding.UTF8.GetBytes(Atom), Encoding.UTF8.GetBytes("""{"title":"t","features":[{"properties":{"messageType":"Alert","id":"1","sent":"2027-09-21T20:00:00Z"}}]}""")];
        var flips = Gen.Select(Gen.Int[0, 1], Gen.Select(Gen.Int[0, 1_000_000], Gen.Byte).Array[0, 4], Gen.Int[0, 1_000_000]).Select((which, changes, length) =>
        {
            var bytes = good[which].ToArray();
            foreach (var (at, value) in changes) bytes[at % bytes.Length] = value;
            return length % 3 == 0 ? bytes[..(length % bytes.Length)] : bytes;
        });
        flips.Sample(bytes => FeedIndexReader.Read(bytes) is var result && (result.IsGood || result.Faults.Count > 0), iter: 2000);
    }

    private static ReadResult<FeedIndex> Read(string text) => FeedIndexReader.Read(Encoding.UTF8.GetBytes(text));

    private static FeedIndex ReadGood(string text)
    {
        Assert.True(FeedIndexReader.IsList(Encoding.UTF8.GetBytes(text)));
        var result = Read(text);
        Assert.True(result.IsGood, string.Join('\n', result.Faults));
        return result.Value!;
    }
}
