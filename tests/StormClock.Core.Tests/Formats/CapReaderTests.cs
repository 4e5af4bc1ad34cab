using System.Text;
using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Formats;

public class CapReaderTests
{
    private const string Alert = """
        <?xml version="1.0" encoding="UTF-8"?>
        <c:alert xmlns:c="urn:oasis:names:tc:emergency:cap:1.2">
          <c:identifier> urn:example:77 </c:identifier>
          <c:sender>wind@example.org</c:sender>
          <c:sent>2027-09-21T15:00:00-04:00</c:sent>
          <c:status>Actual</c:status>
          <c:msgType>Update</c:msgType>
          <c:scope>Public</c:scope>
          <c:references>wind@example.org,urn:example:75,2027-09-21T09:00:00-04:00
            wind@example.org,urn:a,comma:76,2027-09-21T13:00:00-00:00</c:references>
          <c:info>
            <c:language>en-US</c:language>
            <c:event>Tropical Storm Warning</c:event>
            <c:responseType>Prepare</c:responseType>
            <c:responseType>SomethingNew</c:responseType>
            <c:urgency>Expected</c:urgency>
            <c:severity>Very</c:severity>
            <c:certainty>Likely</c:certainty>
            <c:eventCode><c:valueName>SAME</c:valueName><c:value>TRW</c:value></c:eventCode>
            <c:effective>2027-09-21T15:00:00-04:00</c:effective>
            <c:onset>2027-09-22T06:00:00-04:00</c:onset>
            <c:expires>2027-09-21T23:15:00-04:00</c:expires>
            <c:headline> Windy </c:headline>
            <c:parameter><c:valueName>eventEndingTime</c:valueName><c:value>2027-09-23T00:00:00+00:00</c:value></c:parameter>
            <c:area>
              <c:areaDesc>Low country</c:areaDesc>
              <c:polygon> 35,-77 35,-76
                 36,-76 36,-77 </c:polygon>
              <c:polygon>10,20 10,21 11,21 10,20</c:polygon>
              <c:circle>35.2,-76.6 12.5</c:circle>
              <c:geocode><c:valueName>UGC</c:valueName><c:value> NCZ095 </c:value></c:geocode>
            </c:area>
          </c:info>
        </c:alert>
        """;

    [Fact]
    public void Reading_AlertWithPrefixesAndBlanks_GivesEveryPart()
    {
        var alert = ReadGood(Alert);
        var info = Assert.Single(alert.Infos);
        var area = Assert.Single(info.Areas);

        Assert.Equal(("urn:example:77", AlertStatus.Actual, AlertMessageType.Update), (alert.Identifier, alert.Status, alert.Type));
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 19, 0), alert.Sent);
        Assert.Equal(
            [
                new AlertReference("wind@example.org", "urn:example:75", Instant.FromUtc(2027, 9, 21, 13, 0)),
                new AlertReference("wind@example.org", "urn:a,comma:76", Instant.FromUtc(2027, 9, 21, 13, 0)),
            ],
            alert.References);
        Assert.Equal([AlertResponse.Prepare, AlertResponse.Other], info.Responses);
        Assert.Equal(("Very", "Windy", ""), (info.Severity, info.Headline, info.Instruction));
        Assert.Equal(Instant.FromUtc(2027, 9, 22, 10, 0), info.Onset);
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 19, 0), info.Effective);
        Assert.Equal(Instant.FromUtc(2027, 9, 22, 3, 15), info.Expires);
        Assert.Equal(Instant.FromUtc(2027, 9, 23, 0, 0), info.EventEnds);
        Assert.Equal([new AlertGeocode("SAME", "TRW")], info.EventCodes);

        Assert.Equal(2, area.Polygons.Count);
        Assert.Equal(new GeoPoint(35, -77), area.Polygons[0].Ring[0]);
        Assert.Equal(5, area.Polygons[0].Ring.Count);
        Assert.Equal(area.Polygons[0].Ring[0], area.Polygons[0].Ring[^1]);
        Assert.Equal(4, area.Polygons[1].Ring.Count);
        Assert.Equal([new AlertCircle(new GeoPoint(35.2, -76.6), 12.5)], area.Circles);
        Assert.Equal([new AlertGeocode("UGC", "NCZ095")], area.Codes);
    }

    [Fact]
    public void Reading_AlertOfTheVersionBefore_IsTheSame() =>
        Assert.Equivalent(ReadGood(Alert), ReadGood(Alert.Replace("cap:1.2", "cap:1.1")));

    [Theory]
    [InlineData("2027-09-21T15:00:00-04:00", 19)]
    [InlineData("2027-09-21T15:00:00-00:00", 15)]
    [InlineData("2027-09-21T15:00:00Z", 15)]
    [InlineData("2027-09-21T15:00:00.250+05:00", 10)]
    [InlineData("2027-09-21T15:00+0500", 10)]
    public void Reading_Sent_HonoursTheOffset(string written, int hourUtc) =>
        Assert.Equal(hourUtc, ReadGood(Alert.Replace("<c:sent>2027-09-21T15:00:00-04:00", "<c:sent>" + written)).Sent.InUtc().Hour);

    [Theory]
    [InlineData("/O.NEW.KXXX.TR.W.1015.270922T1000Z-270924T0600Z/", "2027-09-24T06:00:00Z")]
    [InlineData("/O.NEW.KXXX.TR.W.1015.270922T1000Z-000000T0000Z/", null)]
    [InlineData("/O.UPG.KXXX.TR.A.1015.000000T0000Z-000000T0000Z/\n/O.NEW.KXXX.TR.W.1015.270922T1000Z-270924T0600Z/", "2027-09-24T06:00:00Z")]
    [InlineData("/O.CAN.KXXX.TR.W.1015.000000T0000Z-270924T0600Z/", null)]
    [InlineData("nothing of the kind", null)]
    public void Reading_VtecInsteadOfEndingTime_GivesTheEventEnd(string vtec, string? end)
    {
        var written = Alert.Replace("eventEndingTime", "VTEC").Replace("2027-09-23T00:00:00+00:00", vtec);
        Assert.Equal(end, ReadGood(written).Infos[0].EventEnds?.ToString());
    }

    [Fact]
    public void Reading_CancelWithoutInfo_IsGood()
    {
        var cancel = ReadGood(Alert[..Alert.IndexOf("<c:info>", StringComparison.Ordinal)].Replace("Update", "Cancel") + "</c:alert>");
        Assert.Equal(AlertMessageType.Cancel, cancel.Type);
        Assert.Empty(cancel.Infos);
    }

    [Theory]
    [InlineData("2027-09-22T06:00:00-04:00", "on Wednesday")]
    [InlineData("2027-09-22T06:00:00-04:00", "2027-09-22T06:00:00")]
    [InlineData("2027-09-22T06:00:00-04:00", "0000-00-00T00:00:00Z")]
    public void Reading_OptionalTimeUnreadable_IsUnknown(string good, string bad) =>
        Assert.Null(ReadGood(Alert.Replace(good, bad)).Infos[0].Onset);

    [Fact]
    public void Reading_ShapesUnreadable_AreKeptAsUndecidable()
    {
        var area = ReadGood(Alert.Replace("10,20 10,21", "10;20 10,21").Replace("12.5", "wide")).Infos[0].Areas[0];
        Assert.Empty(area.Polygons[1].Ring);
        Assert.True(double.IsNaN(area.Circles[0].RadiusKm));
    }

    [Theory]
    [InlineData("<c:sent>2027-09-21T15:00:00-04:00", "<c:sent>2027-09-21T15:00:00", "alert/sent", 5)]
    [InlineData("<c:identifier> urn:example:77 </c:identifier>", "", "alert/identifier", 2)]
    [InlineData("<c:status>Actual", "<c:status>Real", "alert/status", 6)]
    [InlineData("<c:msgType>Update", "<c:msgType>3", "alert/msgType", 7)]
    [InlineData("cap:1.2", "cap:9.0", "alert", 2)]
    [InlineData("c:alert", "c:warning", "warning", 2)]
    public void Reading_WhatIdentifiesItSpoilt_NamesTheElementAndLine(string good, string bad, string where, int line)
    {
        var fault = Assert.Single(Read(Alert.Replace(good, bad)).Faults);
        Assert.Equal((where, line), (fault.Where, fault.Line));
    }

    /// <summary>Entities from inside or outside, and a DTD of any kind, are refused before they can do anything.</summary>
    [Theory]
    [InlineData("<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>")]
    [InlineData("<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;\">]>")]
    [InlineData("<!DOCTYPE x SYSTEM \"http://127.0.0.1:9/x.dtd\">")]
    public void Reading_Dtd_IsRefused(string dtd)
    {
        var at = Alert.IndexOf("<c:alert", StringComparison.Ordinal);
        var fault = Assert.Single(Read(Alert.Insert(at, dtd)).Faults);
        Assert.Contains("DTD", fault.Reason);
    }

    [Fact]
    public void Reading_ElementsVeryDeep_IsRefused()
    {
        var deep = string.Concat(Enumerable.Repeat("<a>", 70_000)) + string.Concat(Enumerable.Repeat("</a>", 70_000));
        Assert.Contains("deep", Assert.Single(Read(Alert.Replace("urn:example:77", deep)).Faults).Reason);
    }

    [Fact]
    public void Reading_HundredMegabytes_IsRefusedUnread()
    {
        var bytes = new byte[100 * 1024 * 1024];
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains("1024 KB", Assert.Single(CapReader.Read(bytes).Faults).Reason);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1024 * 1024);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("iso-8859-1")]
    public void Reading_OtherEncodings_HonoursMarkAndDeclaration(string encoding)
    {
        var code = Encoding.GetEncoding(encoding);
        var bytes = code.GetPreamble().Concat(code.GetBytes(Alert.Replace("UTF-8", encoding).Replace("Windy", "Coup de vent à l’est".Replace('’', '\'')))).ToArray();
        Assert.Equal("Coup de vent à l'est", CapReader.Read(bytes).Value!.Infos[0].Headline);
    }

    /// <summary>The declaration is wrong: the bytes say what they are. An encoding nobody knows is read as Latin-1.</summary>
    [Theory]
    [InlineData("UTF-8", "iso-8859-1", "Böen")]
    [InlineData("UTF-16", "utf-8", "Böen")]
    [InlineData("x-unknown", "utf-8", "Böen")]
    [InlineData("big5", "iso-8859-1", "Böen")]
    public void Reading_WrongDeclaration_GoesByTheContent(string declared, string encoding, string headline)
    {
        var bytes = Encoding.GetEncoding(encoding).GetBytes(Alert.Replace("UTF-8", declared).Replace("Windy", headline));
        Assert.Equal(headline, CapReader.Read(bytes).Value!.Infos[0].Headline);
    }

    [Theory]
    [InlineData("<c:references/>")]
    [InlineData("<c:references> </c:references>")]
    [InlineData("")]
    public void Reading_ReferencesEmpty_IsGood(string references)
    {
        var begin = Alert.IndexOf("<c:references>", StringComparison.Ordinal);
        var end = Alert.IndexOf("<c:info>", StringComparison.Ordinal);
        Assert.Empty(ReadGood(Alert[..begin] + references + Alert[end..]).References);
    }

    [Fact]
    public void Reading_SeveralOfEverything_KeepsAllInOrder()
    {
        var info = Alert[Alert.IndexOf("<c:info>", StringComparison.Ordinal)..Alert.IndexOf("</c:alert>", StringComparison.Ordinal)];
        var area = info[info.IndexOf("<c:area>", StringComparison.Ordinal)..info.IndexOf("</c:info>", StringComparison.Ordinal)];
        var circles = area.Replace("<c:circle>", "<c:circle>10,10 5</c:circle><c:circle>\n");
        var alert = ReadGood(Alert.Replace(area, circles + area).Replace("</c:alert>", info.Replace("en-US", "fr-CA") + "</c:alert>"));

        Assert.Equal(["en-US", "fr-CA"], alert.Infos.Select(one => one.Language));
        Assert.Equal([2, 1], alert.Infos.Select(one => one.Areas.Count));
        Assert.Equal([5, 12.5], alert.Infos[0].Areas[0].Circles.Select(circle => circle.RadiusKm));
    }

    [Fact]
    public void Reading_RingOfThousandsOfPoints_KeepsThemAll()
    {
        var ring = string.Join('\n', Enumerable.Range(0, 20_000).Select(i => FormattableString.Invariant($"{30 + Math.Sin(i * Math.Tau / 20_000):0.0000},{-80 + Math.Cos(i * Math.Tau / 20_000):0.0000}")));
        var area = ReadGood(Alert.Replace("10,20 10,21 11,21 10,20", ring)).Infos[0].Areas[0];
        Assert.Equal(20_001, area.Polygons[1].Ring.Count);
    }

    /// <summary>Sound and pictures travel inside of an alert, and signatures beside it; neither is kept.</summary>
    [Fact]
    public void Reading_ResourceAndSignature_ArePassedOver()
    {
        var extra = "<c:resource><c:uri>" + new string('A', 500_000) + "</c:uri></c:resource><s:Signature xmlns:s='urn:sig'><s:event>no</s:event></s:Signature>";
        Assert.Equivalent(ReadGood(Alert), ReadGood(Alert.Replace("<c:headline>", extra + "<c:headline>")));
    }

    [Fact]
    public void Reading_Envelope_GivesTheAlertInside()
    {
        var alert = Alert[Alert.IndexOf("<c:alert", StringComparison.Ordinal)..];
        string Envelope(string inside) => $"<e:EDXLDistribution xmlns:e='urn:oasis:names:tc:emergency:EDXL:DE:1.0'><e:contentObject><e:xmlContent><e:embeddedXMLContent>{inside}</e:embeddedXMLContent></e:xmlContent></e:contentObject></e:EDXLDistribution>";
        Assert.Equivalent(ReadGood(Alert), ReadGood(Envelope(alert)));
        Assert.Contains("without a CAP alert", Assert.Single(Read(Envelope("")).Faults).Reason);
        Assert.Contains("more than one", Assert.Single(Read(Envelope(alert + alert)).Faults).Reason);
    }

    [Theory]
    [InlineData("</c:alert>", "")]
    [InlineData("</c:alert>", "</c:alert><x/>")]
    public void Reading_BrokenOffOrGoingOn_IsAFault(string good, string bad) => Assert.False(Read(Alert.Replace(good, bad)).IsGood);

    [Fact]
    public void Reading_SpoiltAtRandom_NeverThrows()
    {
        var good = Encoding.UTF8.GetBytes(Alert);
        var cut = Gen.Int[0, good.Length].Select(length => good[..length]);
        var flips = Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte).Array[1, 6].Select(changes =>
        {
            var bytes = good.ToArray();
            foreach (var (at, value) in changes) bytes[at] = value;
            return bytes;
        });

        Gen.OneOf(cut, flips).Sample(bytes =>
        {
            var result = CapReader.Read(bytes);
            return result.IsGood || result.Faults.All(fault => fault.Line >= 1);
        }, iter: 2000);
    }

    private static ReadResult<AlertMessage> Read(string xml) => CapReader.Read(Encoding.UTF8.GetBytes(xml));

    private static AlertMessage ReadGood(string xml)
    {
        var result = Read(xml);
        Assert.True(result.IsGood, string.Join('\n', result.Faults));
        return result.Value!;
    }
}
