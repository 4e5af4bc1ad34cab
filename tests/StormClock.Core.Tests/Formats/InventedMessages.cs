using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;

namespace StormClock.Core.Tests.Formats;

/// <summary>Small messages of every kind that is read, made up in the form that the offices use.</summary>
internal static class InventedMessages
{
    public const string Hours = """
        {"type":"Feature","geometry":{"type":"Polygon","coordinates":[[[-70.02,40.00],[-70.00,40.00],[-70.00,40.02],[-70.02,40.02],[-70.02,40.00]]]},
         "properties":{"units":"us","forecastGenerator":"HourlyForecastGenerator","updateTime":"2027-09-21T15:00:00+00:00","periods":[
          {"number":1,"name":"","startTime":"2027-09-21T12:00:00-04:00","endTime":"2027-09-21T13:00:00-04:00","windSpeed":"10 to 15 mph","windGust":null},
          {"number":2,"name":"","startTime":"2027-09-21T13:00:00-04:00","endTime":"2027-09-21T14:00:00-04:00","windSpeed":{"unitCode":"wmoUnit:km_h-1","minValue":18,"maxValue":36},"windGust":"40 mph"}]}}
        """;

    public const string Grid = """
        {"type":"Feature","geometry":{"type":"Point","coordinates":[-70.01,40.01]},
         "properties":{"@type":"wx:Gridpoint","updateTime":"2027-09-21T15:00:00+00:00",
          "windSpeed":{"uom":"wmoUnit:km_h-1","values":[{"validTime":"2027-09-21T12:00:00+00:00/PT6H","value":36},{"validTime":"2027-09-21T18:00:00+00:00/P1DT6H","value":72}]},
          "windGust":{"uom":"wmoUnit:km_h-1","values":[{"validTime":"2027-09-21T18:00:00+00:00/PT2H","value":108},{"validTime":"2027-09-21T20:00:00+00:00/PT2H","value":null}]},
          "quantitativePrecipitation":{"uom":"wmoUnit:mm","values":[{"validTime":"2027-09-21T12:00:00+00:00/PT12H","value":24}]},
          "probabilityOfThunder":{"values":[{"validTime":"2027-09-21T12:00:00+00:00/P2D","value":20}]}}}
        """;

    public const string Observations = """
        {"type":"FeatureCollection","features":[
         {"type":"Feature","geometry":{"type":"Point","coordinates":[-70.0,40.0]},"properties":{"station":"https://weather.example/stations/KXYZ","timestamp":"2027-09-21T15:53:00+00:00",
          "windSpeed":{"unitCode":"wmoUnit:km_h-1","value":36,"qualityControl":"V"},"windGust":{"unitCode":"wmoUnit:km_h-1","value":null,"qualityControl":"Z"}}},
         {"type":"Feature","geometry":null,"properties":{"station":"https://weather.example/stations/KXYZ","timestamp":"2027-09-21T14:53:00+00:00",
          "windSpeed":{"unitCode":"wmoUnit:km_h-1","value":72,"qualityControl":"X"},"windGust":{"unitCode":"wmoUnit:m_s-1","value":15,"qualityControl":"qc:V"}}}]}
        """;

    public const string Public = """
        000
        WTNT34 KNHC 211749
        TCPAT4

        BULLETIN
        Tropical Storm Quill Intermediate Advisory Number 12A
        NWS National Hurricane Center Miami FL       AL982027
        200 PM EDT Tue Sep 21 2027

        SUMMARY OF 200 PM EDT...1800 UTC...INFORMATION
        LOCATION...17.7N 81.7W
        MAXIMUM SUSTAINED WINDS...70 MPH...110 KM/H
        PRESENT MOVEMENT...NW OR 320 DEGREES AT 13 MPH...20 KM/H
        MINIMUM CENTRAL PRESSURE...988 MB...29.18 INCHES

        $$
        """;

    public const string OldPublic = """
        ZCZC MIATCPAT3 ALL
        TTAA00 KNHC DDHHMM
        BULLETIN
        HURRICANE QUILL ADVISORY NUMBER  31
        NATIONAL WEATHER SERVICE MIAMI FL
        11 PM EDT TUE SEP 21 1999

        REPEATING THE 11 PM EDT POSITION...30.1 N... 78.4 W.  MOVEMENT
        TOWARD...NORTH-NORTHWEST NEAR 15 MPH.  MAXIMUM SUSTAINED
        WINDS...115 MPH.  MINIMUM CENTRAL PRESSURE... 943 MB.
        """;

    public const string Statement = """
        263
        WTUS84 KXYZ 210904
        TCVXYZ

        URGENT - IMMEDIATE BROADCAST REQUESTED
        Quill Local Watch/Warning Statement/Advisory Number 35
        National Weather Service Anytown  AL982027
        404 AM CDT Tue Sep 21 2027

        TXZ437>439-447-LAZ001-
        002-211715-
        /O.NEW.KXYZ.HU.W.1002.270921T0904Z-000000T0000Z/
        /O.UPG.KXYZ.HU.A.1002.000000T0000Z-000000T0000Z/
        Quince Islands-Mainland Quince-
        404 AM CDT Tue Sep 21 2027

        ...HURRICANE WARNING IN EFFECT...

        * WIND
            - LATEST LOCAL FORECAST: Equivalent Tropical Storm force wind
                - Peak Wind Forecast: 50-65 mph with gusts to 80 mph
                - Window for Tropical Storm force winds: Tuesday evening until Wednesday morning

        $$

        TXZ440-211715-
        /O.CAN.KXYZ.TR.W.1002.000000T0000Z-000000T0000Z/
        Upper Quince-

        ...TROPICAL STORM WARNING IS CANCELLED...

        LAT...LON 3037 9379 3057 9375 3068 9367

        $$
        """;

    public const string AviationText = """
        TC ADVISORY
        DTG:                  20270921/1900Z
        TCAC:                 XXXX
        TC:                   QUILL
        ADVISORY NR:          2027/13
        OBS PSN:              21/1800Z N2706 W07306
        MOV:                  NW 20KMH
        MAX WIND:             93KT
        FCST PSN +6 HR:       22/0000Z N2748 W07350
        FCST MAX WIND +6 HR:  50MPS
        FCST PSN +12 HR:      NIL
        RMK:                  NIL
        """;

    public const string AviationXml = """
        <iwxxm:TropicalCycloneAdvisory xmlns:gml="http://www.opengis.net/gml/3.2" xmlns:iwxxm="http://icao.int/iwxxm/2025-2" xmlns:o="urn:o" permissibleUsage="OPERATIONAL" reportStatus="NORMAL">
         <iwxxm:issueTime><gml:TimeInstant><gml:timePosition>2027-09-21T19:00:00Z</gml:timePosition></gml:TimeInstant></iwxxm:issueTime>
         <iwxxm:issuingTropicalCycloneAdvisoryCentre><o:designator>XXXX</o:designator></iwxxm:issuingTropicalCycloneAdvisoryCentre>
         <iwxxm:tropicalCycloneName><o:name>QUILL</o:name></iwxxm:tropicalCycloneName>
         <iwxxm:advisoryNumber>2027/13</iwxxm:advisoryNumber>
         <iwxxm:observation><iwxxm:phenomenonTime><gml:timePosition>2027-09-21T18:00:00Z</gml:timePosition></iwxxm:phenomenonTime>
          <iwxxm:tropicalCyclonePosition><gml:Point axisLabels="Lat Long"><gml:pos>27.1 -73.1</gml:pos></gml:Point></iwxxm:tropicalCyclonePosition>
          <iwxxm:maximumSurfaceWindSpeed uom="[kn_i]">93</iwxxm:maximumSurfaceWindSpeed></iwxxm:observation>
         <iwxxm:forecast><iwxxm:phenomenonTime><gml:timePosition>2027-09-22T00:00:00Z</gml:timePosition></iwxxm:phenomenonTime>
          <iwxxm:tropicalCyclonePosition><gml:Point axisLabels="Lat Long"><gml:pos>27.8 -73.83333333333333</gml:pos></gml:Point></iwxxm:tropicalCyclonePosition>
          <iwxxm:maximumSurfaceWindSpeed uom="m/s">50</iwxxm:maximumSurfaceWindSpeed></iwxxm:forecast>
         <iwxxm:forecast nilReason="inapplicable"/>
        </iwxxm:TropicalCycloneAdvisory>
        """;

    public const string Note = """{"note":"wind","garden":"quince","by":"Ada","made":"2027-09-21T15:00:00Z","from":"2027-09-22T06:00:00Z","gustMps":28}""";

    public const string Alert = """
        <alert xmlns="urn:oasis:names:tc:emergency:cap:1.2"><identifier>1</identifier><sender>a@b.example</sender><sent>2027-09-21T15:00:00Z</sent>
        <status>Actual</status><msgType>Update</msgType><references>a@b.example,0,2027-09-21T09:00:00Z</references>
        <info><language>en</language><event>Hurricane Warning</event><responseType>Prepare</responseType><urgency>Expected</urgency><severity>Extreme</severity>
        <certainty>Likely</certainty><expires>2027-09-22T03:00:00Z</expires><area><areaDesc>Here</areaDesc><polygon>40,-70 41,-70 41,-71 40,-70</polygon>
        <circle>40,-70 25</circle><geocode><valueName>UGC</valueName><value>TXZ437</value></geocode></area></info></alert>
        """;

    public static readonly IReadOnlyList<string> All =
        [Hours, Grid, Observations, Public, OldPublic, Statement, AviationText, AviationXml, Note, Alert, AdvisoryText.Invented, ProbabilityText.Ian16];

    public static ReadResult<IReadOnlyList<Advisory>> ReadAll(string text) => MessageReader.ReadAll(Encoding.UTF8.GetBytes(text));

    /// <summary>The one message of a text that is good.</summary>
    public static T One<T>(string text)
        where T : Advisory
    {
        var read = ReadAll(text);
        Assert.True(read.IsGood, string.Join('\n', read.Faults));
        return Assert.IsType<T>(Assert.Single(read.Value!));
    }
}
