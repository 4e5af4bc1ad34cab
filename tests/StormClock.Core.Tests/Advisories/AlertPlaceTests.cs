using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Advisories;

public class AlertPlaceTests
{
    private static readonly (double, double)[] Square = [(35, -77), (35, -76), (36, -76), (36, -77), (35, -77)];

    [Theory]
    [InlineData(35.2, -76.6, AlertWhere.Concerns)]
    [InlineData(35.0, -76.5, AlertWhere.Concerns)] // on the edge
    [InlineData(34.9, -76.6, AlertWhere.Elsewhere)]
    [InlineData(35.2, 103.4, AlertWhere.Elsewhere)] // the other side of the globe
    [InlineData(-76.6, 35.2, AlertWhere.Elsewhere)] // latitude and longitude changed over
    public void Matching_Polygon_DecidesByTheSite(double lat, double lon, AlertWhere expected) =>
        Assert.Equal(expected, AlertPlace.Of(Alerts.Area(Square), Alerts.SiteAt(new GeoPoint(lat, lon))));

    [Theory]
    [InlineData(179.9, AlertWhere.Concerns)]
    [InlineData(-179.9, AlertWhere.Concerns)]
    [InlineData(178.5, AlertWhere.Elsewhere)]
    [InlineData(0.0, AlertWhere.Elsewhere)]
    public void Matching_PolygonAcrossTheDateLine_StaysInOnePiece(double lon, AlertWhere expected)
    {
        var area = Alerts.Area([(-19, 179), (-19, -179), (-17, -179), (-17, 179), (-19, 179)]);
        Assert.Equal(expected, AlertPlace.Of(area, Alerts.SiteAt(new GeoPoint(-18, lon))));
    }

    /// <summary>Two lobes that meet where the ring crosses itself; both belong to the area.</summary>
    [Theory]
    [InlineData(35.2, -76.5, AlertWhere.Concerns)]
    [InlineData(35.8, -76.5, AlertWhere.Concerns)]
    [InlineData(35.5, -76.9, AlertWhere.Elsewhere)]
    public void Matching_RingThatCrossesItself_IsMended(double lat, double lon, AlertWhere expected)
    {
        var area = Alerts.Area([(35, -77), (35, -76), (36, -77), (36, -76), (35, -77)]);
        Assert.Equal(expected, AlertPlace.Of(area, Alerts.SiteAt(new GeoPoint(lat, lon))));
    }

    [Fact]
    public void Matching_RingWithoutAnInside_MayConcern()
    {
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Area([(35, -77), (36, -77), (35, -77)]), Alerts.Home));
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Area([(50, 7), (50, 7), (50, 7), (50, 7)]), Alerts.Home));
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Area([]), Alerts.Home));
    }

    /// <summary>One degree of latitude is 111.195 km on the sphere of 6371.0088 km.</summary>
    [Theory]
    [InlineData(36.2, -76.6, 111.20, AlertWhere.Concerns)]
    [InlineData(36.2, -76.6, 111.19, AlertWhere.Elsewhere)]
    [InlineData(36.2, -76.6, 0, AlertWhere.MayConcern)]
    [InlineData(36.2, -76.6, double.NaN, AlertWhere.MayConcern)]
    public void Matching_Circle_MeasuresTheGreatCircle(double lat, double lon, double km, AlertWhere expected) =>
        Assert.Equal(expected, AlertPlace.Of(Alerts.Area(circle: (lat, lon, km)), Alerts.Home));

    /// <summary>Science.md G3: 57.10 n mi, 105.75 km, across the date line.</summary>
    [Fact]
    public void Matching_CircleAcrossTheDateLine_TakesTheShortWay()
    {
        var suva = Alerts.SiteAt(new GeoPoint(-18, -179.5));
        Assert.Equal(AlertWhere.Concerns, AlertPlace.Of(Alerts.Area(circle: (-18, 179.5, 105.85)), suva));
        Assert.Equal(AlertWhere.Elsewhere, AlertPlace.Of(Alerts.Area(circle: (-18, 179.5, 105.65)), suva));
    }

    [Theory]
    [InlineData("UGC", "NCZ095", AlertWhere.Concerns)]
    [InlineData("UGC", "ncz095", AlertWhere.Concerns)]
    [InlineData("UGC", "NCZ103", AlertWhere.Elsewhere)]
    [InlineData("UGC", "NCZ000", AlertWhere.Concerns)] // the whole state
    [InlineData("UGC", "NCC013", AlertWhere.MayConcern)] // a county, but the site knows only its zone
    [InlineData("SAME", "037013", AlertWhere.Concerns)]
    [InlineData("SAME", "037137", AlertWhere.Elsewhere)]
    [InlineData("SAME", "037000", AlertWhere.Concerns)]
    [InlineData("SAME", "000000", AlertWhere.Concerns)]
    [InlineData("SAME", "137013", AlertWhere.MayConcern)] // a part of the county
    [InlineData("EMMA_ID", "FR013", AlertWhere.MayConcern)]
    public void Matching_Codes_DecideOnlyWhatTheyCan(string scheme, string code, AlertWhere expected) =>
        Assert.Equal(expected, AlertPlace.Of(Alerts.Area(codes: [(scheme, code)]), Alerts.Home));

    [Fact]
    public void Matching_SiteWithoutCodes_CannotRuleOutAListOfCodes() =>
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.There, Alerts.SiteAt(new GeoPoint(35.2, -76.6))));

    [Fact]
    public void Matching_ShapeAndCodes_OneThatSaysHereIsEnough()
    {
        (double, double)[] far = [(45, -77), (45, -76), (46, -76), (46, -77), (45, -77)];
        Assert.Equal(AlertWhere.Concerns, AlertPlace.Of(Alerts.Area(far, codes: [("UGC", "NCZ095")]), Alerts.Home));
        Assert.Equal(AlertWhere.Elsewhere, AlertPlace.Of(Alerts.Area(far, codes: [("EMMA_ID", "FR013")]), Alerts.Home));
        Assert.Equal(AlertWhere.Concerns, AlertPlace.Of(Alerts.Area(Square, codes: [("UGC", "NCZ103")]), Alerts.Home));
    }

    /// <summary>No box may put away what has no inside: a line far off may concern everybody, also one that goes back on itself.</summary>
    [Fact]
    public void Matching_RingWithoutAnInsideFarAway_MayConcern()
    {
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Area([(10, 10), (11, 11), (10, 10), (10, 10)]), Alerts.Home));
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Area([(80, 0), (80, 120), (80, -120), (80, 0)]), Alerts.Home));
    }

    /// <summary>Two equal lobes turned against each other: their sum is nothing, and yet both are inside.</summary>
    [Theory]
    [InlineData(35.25, -76.9, AlertWhere.Concerns)]
    [InlineData(35.25, -76.1, AlertWhere.Concerns)]
    [InlineData(40, -76.5, AlertWhere.Elsewhere)]
    public void Matching_BowTie_HasBothLobes(double lat, double lon, AlertWhere expected) =>
        Assert.Equal(expected, AlertPlace.Of(Alerts.Area([(35, -77), (35.5, -76), (35, -76), (35.5, -77), (35, -77)]), Alerts.SiteAt(new GeoPoint(lat, lon))));

    [Fact]
    public void Matching_NothingSaid_MayConcern()
    {
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Somewhere, Alerts.Home));
        Assert.Equal(AlertWhere.MayConcern, AlertPlace.Of(Alerts.Info() with { Areas = [] }, Alerts.Home));
    }

    /// <summary>A box around any place on the globe contains it, and a box beside it does not, wherever the date line runs.</summary>
    [Fact]
    public void Matching_AnyBox_ContainsItsMiddleOnly() =>
        Gen.Select(Gen.Double[-80, 80], Gen.Double[-180, 180], Gen.Double[0.1, 20], Gen.Double[0.1, 5]).Sample((lat, lon, wide, high) =>
        {
            var box = Alerts.Area([Corner(-1, -1), Corner(-1, 1), Corner(1, 1), Corner(1, -1), Corner(-1, -1)]);
            return AlertPlace.Of(box, Alerts.SiteAt(new GeoPoint(lat, lon))) == AlertWhere.Concerns
                && AlertPlace.Of(box, Alerts.SiteAt(new GeoPoint(lat, Wrapped(lon + (2.5 * wide))))) == AlertWhere.Elsewhere;

            (double, double) Corner(int north, int east) => (lat + (north * high), Wrapped(lon + (east * wide)));
        });

    private static double Wrapped(double lon) => lon > 180 ? lon - 360 : lon <= -180 ? lon + 360 : lon;
}
