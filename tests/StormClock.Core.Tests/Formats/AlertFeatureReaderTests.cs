using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Formats.Feeds;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Formats;

public class AlertFeatureReaderTests
{
    private const string Feature = """
        {"id": "https://example.org/alerts/urn:example:91", "type": "Feature",
         "geometry": {"type": "Polygon", "coordinates": [[[-77, 35], [-76, 35], [-76, 36]], [[-76.5, 35.1], [-76.4, 35.1], [-76.4, 35.2], [-76.5, 35.1]]]},
         "properties": {"id": "urn:example:91", "areaDesc": "Low country", "geocode": {"SAME": ["037013"], "UGC": ["NCZ095", "NCZ103"]},
          "references": [{"identifier": "urn:example:90", "sender": "wind@example.org", "sent": "2027-09-21T09:00:00-04:00"}, {"identifier": "urn:nothing"}],
          "sent": "2027-09-21T15:00:00-04:00", "effective": "2027-09-21T15:00:00-04:00", "onset": "2027-09-22T06:00:00-04:00",
          "expires": "2027-09-21T23:15:00-04:00", "ends": "2027-09-22T20:00:00-04:00", "status": "Actual", "messageType": "Update",
          "severity": "Severe", "certainty": "Likely", "urgency": "Expected", "event": "Tropical Storm Warning", "sender": "wind@example.org",
          "headline": "Windy", "description": "d", "instruction": null, "response": "Prepare",
          "parameters": {"VTEC": ["/O.CON.KXXX.TR.W.1015.000000T0000Z-270923T0600Z/"]}, "eventCode": {"SAME": ["TRW"]}}}
        """;

    [Fact]
    public void Reading_Feature_GivesEveryPart()
    {
        var alert = ReadGood(Feature);
        var info = Assert.Single(alert.Infos);
        var area = Assert.Single(info.Areas);
        Assert.Equal((AlertStatus.Actual, AlertMessageType.Update, "wind@example.org,urn:example:91,2027-09-21T19:00:00Z"), (alert.Status, alert.Type, alert.Id));
        Assert.Equal([new AlertReference("wind@example.org", "urn:example:90", Instant.FromUtc(2027, 9, 21, 13, 0))], alert.References);
        Assert.Equal(Instant.FromUtc(2027, 9, 23, 6, 0), info.EventEnds);
        Assert.Equal((Instant.FromUtc(2027, 9, 22, 10, 0), Instant.FromUtc(2027, 9, 22, 3, 15)), (info.Onset, info.Expires));
        Assert.Equal([AlertResponse.Prepare], info.Responses);
        Assert.Equal([new AlertGeocode("SAME", "TRW")], info.EventCodes);
        Assert.Equal(["037013", "NCZ095", "NCZ103"], area.Codes.Select(code => code.Code));
        Assert.Equal([new(35, -77), new(35, -76), new(36, -76), new(35, -77)], Assert.Single(area.Polygons).Ring);
        Assert.Equal("", info.Instruction);
    }

    [Fact]
    public void Reading_EndInTheCodeMissing_TakesTheNamedEnd() =>
        Assert.Equal(Instant.FromUtc(2027, 9, 23, 0, 0), ReadGood(Feature.Replace("VTEC", "other")).Infos[0].EventEnds);

    /// <summary>What cannot be decided counts as perhaps here; no geometry at all leaves it to the codes.</summary>
    [Theory]
    [InlineData("\"geometry\": null, \"was\":", 0)]
    [InlineData("\"geometry\": {\"type\": \"MultiPolygon\", \"coordinates\": [[[[1,2],[3,2],[3,4]]],[[[1,2],[3,2],[3,4]]]]}, \"was\":", 2)]
    [InlineData("\"geometry\": {\"type\": \"Curve\"}, \"was\":", 1)]
    [InlineData("\"geometry\": {\"type\": \"Polygon\", \"coordinates\": [[[1,2],[3,200],[3,4]]]}, \"was\":", 1)]
    [InlineData("\"geometry\": {\"type\": \"Polygon\", \"coordinates\": 7}, \"was\":", 1)]
    public void Reading_OtherGeometry_KeepsTheAlert(string geometry, int polygons) =>
        Assert.Equal(polygons, ReadGood(Feature.Replace("\"geometry\":", geometry)).Infos[0].Areas[0].Polygons.Count);

    [Theory]
    [InlineData("\"sent\": \"2027-09-21T15:00:00-04:00\"", "\"sent\": 7", "properties/sent")]
    [InlineData("\"id\": \"urn:example:91\"", "\"id\": \"\"", "properties/id")]
    [InlineData("\"status\": \"Actual\"", "\"status\": \"Real\"", "properties/status")]
    [InlineData("\"messageType\": \"Update\"", "\"messageType\": null", "properties/messageType")]
    public void Reading_WhatIdentifiesItSpoilt_NamesThePlace(string good, string bad, string where) =>
        Assert.Equal(where, Assert.Single(MessageReader.Read(Encoding.UTF8.GetBytes(Feature.Replace(good, bad))).Faults).Where);

    [Fact]
    public void Reading_SameAlertFromFeatureAndFromCap_IsOneInTheLedger()
    {
        const string cap = """
            <alert xmlns="urn:oasis:names:tc:emergency:cap:1.2"><identifier>urn:example:91</identifier><sender>wind@example.org</sender>
            <sent>2027-09-21T19:00:00-00:00</sent><status>Actual</status><msgType>Update</msgType></alert>
            """;
        var now = Instant.FromUtc(2027, 9, 21, 20, 0);
        var ledger = AdvisoryLedger.Empty.With(ReadGood(Feature), now).With(MessageReader.Read(Encoding.UTF8.GetBytes(cap)).Value!, now);
        Assert.Single(ledger.All);
    }

    /// <summary>15 December 2025: updates name the alerts before them, and codes and shapes decide where.</summary>
    [Fact]
    public void Reading_RealListIntoTheLedger_TellsTheGardenInTheRing()
    {
        var bytes = File.ReadAllBytes(Path.Combine(Shared.Folder("nws-api"), "alerts-active-2025-12-15-northwest.json"));
        var alerts = FeedIndexReader.Read(bytes).Value!.Entries.Select(entry => (AlertMessage)MessageReader.Read(entry.Message).Value!).ToList();
        Assert.Equal(151, alerts.Count(alert => alert.Type == AlertMessageType.Update));
        Assert.Equal(19, alerts.Sum(alert => alert.Infos[0].Areas[0].Polygons.Count));
        Assert.Equal("King, WA", alerts[0].Infos[0].Areas[0].Description);

        var inside = new Core.Garden.Site("s", "s", new GeoPoint(47.45, -122.235), Core.Garden.Terrain.Suburb, new Dictionary<string, int>(), []);
        var faraway = inside with { At = new GeoPoint(33.7, -84.4) };
        Assert.Equal((AlertWhere.Concerns, AlertWhere.Elsewhere), (AlertPlace.Of(alerts[0].Infos[0], inside), AlertPlace.Of(alerts[0].Infos[0], faraway)));
    }

    private static AlertMessage ReadGood(string json)
    {
        Assert.True(AlertFeatureReader.IsAlert(Encoding.UTF8.GetBytes(json)));
        var result = MessageReader.Read(Encoding.UTF8.GetBytes(json));
        Assert.True(result.IsGood, string.Join('\n', result.Faults));
        return Assert.IsType<AlertMessage>(result.Value);
    }
}
