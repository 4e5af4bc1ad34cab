using System.Globalization;
using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;
using StormClock.Core.Garden;

namespace StormClock.Benchmarks;

/// <summary>
/// An invented day of a whole country: 1,500 alerts of about 10 KB each, most with a ring of many points and all with codes,
/// as a list in Atom that carries them whole and as a list of features; and a thousand gardens in the same country.
/// </summary>
internal static class NationalAlerts
{
    public const int Alerts = 1500;

    private static readonly string Words = string.Concat(Enumerable.Range(0, 90).Select(i => $"* Wind {i} to {i + 15} mph with gusts near {i + 30} mph is expected over the low ground.\n"));

    public static byte[] Atom() => Encoding.UTF8.GetBytes(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<feed xmlns=\"http://www.w3.org/2005/Atom\"><id>invented</id><title>Invented</title><updated>2027-09-21T12:00:00Z</updated>\n"
        + string.Concat(Enumerable.Range(0, Alerts).Select(i => $"<entry><id>urn:example:{i}</id><title>Wind</title><content type=\"text/xml\">{Cap(i)}</content></entry>\n")) + "</feed>");

    public static byte[] Features() => Encoding.UTF8.GetBytes(
        "{\"type\": \"FeatureCollection\", \"features\": [" + string.Join(",\n", Enumerable.Range(0, Alerts).Select(Feature)) + "], \"title\": \"invented\"}");

    public static IReadOnlyList<Site> Gardens() =>
        [.. Enumerable.Range(0, 1000).Select(i => new Site($"garden-{i}", "Garden", new(25 + i % 100 * 0.24, -124 + i / 10 * 0.57), Terrain.Suburb, new Dictionary<string, int>(), [Zone(i), $"0{State(i):00}{i % 130:000}"]))];

    /// <summary>How many pairs of an alert and a garden may have to do with each other.</summary>
    public static int ToGardens(byte[] list, IReadOnlyList<Site> gardens) =>
        Messages(list).Sum(alert => AlertPlace.MayConcern(alert, gardens).Count());

    /// <summary>One after the other, as the service takes them in.</summary>
    public static IEnumerable<AlertMessage> Messages(byte[] list) =>
        FeedIndexReader.Read(list).Value!.Entries.Select(entry => (AlertMessage)MessageReader.Read(entry.Message).Value!);

    public static string Cap(int i)
    {
        var (points, codes) = (Ring(i, (lat, lon) => $"{lat},{lon} "), Enumerable.Range(i, 12).ToList());
        return $"""
            <alert xmlns="urn:oasis:names:tc:emergency:cap:1.2">
              <identifier>urn:example:{i}</identifier>
              <sender>wind@example.org</sender>
              <sent>2027-09-21T15:00:00-04:00</sent>
              <status>Actual</status>
              <msgType>Alert</msgType>
              <scope>Public</scope>
              <info>
                <language>en-US</language>
                <category>Met</category>
                <event>High Wind Warning</event>
                <responseType>Prepare</responseType>
                <urgency>Expected</urgency>
                <severity>Severe</severity>
                <certainty>Likely</certainty>
                <eventCode><valueName>SAME</valueName><value>HWW</value></eventCode>
                <effective>2027-09-21T15:00:00-04:00</effective>
                <onset>2027-09-22T06:00:00-04:00</onset>
                <expires>2027-09-22T23:15:00-04:00</expires>
                <headline>High Wind Warning</headline>
                <description>{Words}</description>
                <parameter><valueName>VTEC</valueName><value>/O.NEW.KXXX.HW.W.{i:0000}.270922T1000Z-270924T0600Z/</value></parameter>
                <area>
                  <areaDesc>Part {i}</areaDesc>
                  {(i % 4 == 3 ? "" : $"<polygon>{points}</polygon>")}
                  {string.Concat(codes.Select(code => $"<geocode><valueName>UGC</valueName><value>{Zone(code)}</value></geocode><geocode><valueName>SAME</valueName><value>0{State(code):00}{code % 130:000}</value></geocode>"))}
                </area>
              </info>
            </alert>
            """;
    }

    private static string Feature(int i)
    {
        var (points, codes) = (Ring(i, (lat, lon) => $"[{lon}, {lat}], ").TrimEnd(' ', ','), Enumerable.Range(i, 12).ToList());
        var geometry = i % 4 == 3 ? "null" : $"{{\"type\": \"Polygon\", \"coordinates\": [[{points}]]}}";
        return $$"""
            {"id": "https://example.org/{{i}}", "type": "Feature", "geometry": {{geometry}}, "properties": {"id": "urn:example:{{i}}", "areaDesc": "Part {{i}}",
             "geocode": {"SAME": [{{string.Join(", ", codes.Select(code => $"\"0{State(code):00}{code % 130:000}\""))}}], "UGC": [{{string.Join(", ", codes.Select(code => $"\"{Zone(code)}\""))}}]},
             "references": [], "sent": "2027-09-21T15:00:00-04:00", "effective": "2027-09-21T15:00:00-04:00", "onset": "2027-09-22T06:00:00-04:00", "expires": "2027-09-22T23:15:00-04:00",
             "ends": "2027-09-24T06:00:00+00:00", "status": "Actual", "messageType": "Alert", "severity": "Severe", "certainty": "Likely", "urgency": "Expected", "event": "High Wind Warning",
             "sender": "wind@example.org", "headline": "High Wind Warning", "description": "{{Words.Replace("\n", "\\n")}}", "response": "Prepare",
             "parameters": {"VTEC": ["/O.NEW.KXXX.HW.W.{{i:0000}}.270922T1000Z-270924T0600Z/"]}, "eventCode": {"SAME": ["HWW"]} } }
            """;
    }

    /// <summary>About half a degree wide, with a ragged edge.</summary>
    private static string Ring(int i, Func<string, string, string> point)
    {
        const int points = 60;
        var (lat, lon) = (26 + i % 60 * 0.37, -123 + i / 60 * 2.2);
        return string.Concat(Enumerable.Range(0, points + 1).Select(k =>
        {
            var (angle, reach) = (k % points * Math.Tau / points, 0.5 + 0.1 * Math.Cos(k % points * 7));
            return point(Number(lat + reach * Math.Sin(angle)), Number(lon + reach * Math.Cos(angle)));
        }));
    }

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static int State(int i) => 1 + i / 30 % 50;

    private static string Zone(int i) => $"{(char)('A' + i / 30 % 26)}{(char)('A' + i / 7 % 3)}Z{i % 130:000}";
}
