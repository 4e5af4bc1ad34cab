using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Advisories;

/// <summary>Invented alerts and a site for tests of where and how long they stand.</summary>
internal static class Alerts
{
    public static readonly Instant Start = Instant.FromUtc(2027, 9, 21, 12, 0);

    public static readonly Site Home = SiteAt(new GeoPoint(35.2, -76.6), "NCZ095", "037013");

    public static readonly AlertArea Here = Area(codes: [("UGC", "NCZ095")]);

    public static readonly AlertArea There = Area(codes: [("UGC", "NCZ103")]);

    public static readonly AlertArea Somewhere = Area();

    public static Site SiteAt(GeoPoint at, params string[] codes) =>
        new("home", "Home", at, Terrain.OpenFarmland, new Dictionary<string, int>(), codes);

    public static Instant At(double hours) => Start + Duration.FromHours(hours);

    public static AlertArea Area(
        (double Lat, double Lon)[]? ring = null, (double Lat, double Lon, double Km)? circle = null, (string, string)[]? codes = null) => new(
        "made up",
        ring is null ? [] : [new AlertPolygon([.. ring.Select(point => new GeoPoint(point.Lat, point.Lon))])],
        circle is { } c ? [new AlertCircle(new GeoPoint(c.Lat, c.Lon), c.Km)] : [],
        [.. (codes ?? []).Select(code => new AlertGeocode(code.Item1, code.Item2))]);

    public static AlertInfo Info(
        string name = "Tropical Storm Warning",
        AlertArea? area = null,
        double? expires = null,
        double? eventEnds = null,
        AlertResponse[]? responses = null,
        (string, string)[]? codes = null) => new(
        "en-US", name, responses ?? [], "Expected", "Severe", "Likely", null, null,
        expires is { } e ? At(e) : null, eventEnds is { } v ? At(v) : null, "", "", "", [], [area ?? Here])
        {
            EventCodes = [.. (codes ?? []).Select(code => new AlertGeocode(code.Item1, code.Item2))],
        };

    public static AlertMessage Message(
        string identifier, double sent, AlertInfo? info = null, AlertMessageType type = AlertMessageType.Alert, params AlertMessage[] of) => new(
        "wind@example.org", identifier, At(sent), AlertStatus.Actual, type,
        [.. of.Select(one => new AlertReference(one.Sender, one.Identifier, one.Sent))],
        info is null ? [] : [info]);

    public static AdvisoryLedger Ledger(params Advisory[] advisories) =>
        advisories.Aggregate(AdvisoryLedger.Empty, (ledger, advisory) => ledger.With(advisory, advisory.Issued));
}
