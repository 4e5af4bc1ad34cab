using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Service.Books;

/// <summary>Sites, areas and stores.</summary>
public sealed partial class GardenReader
{
    private const int MostTravelMinutes = 600;

    /// <summary>Deeper and higher than any garden, by whatever datum.</summary>
    private const double LowestGroundM = -500;

    private const double HighestGroundM = 6000;

    private const double FarthestM = 100_000;

    private List<Site> Sites(YamlFields top)
    {
        var sites = new List<Site>();
        foreach (var fields in top.Maps("sites", "site", GardenKeys.Site, "- {id: home, name: Home, latitude: 30.1, longitude: -84.2}", required: true))
        {
            sites.Add(Site(fields));
            Once(siteFields, sites[^1].Id, fields, "site");
        }

        return WithWayBack(sites);
    }

    /// <summary>Terrain and exposure that are not written are the windiest: a gap in the survey must not look like shelter.</summary>
    private Site Site(YamlFields fields) => new Site(
        fields.Id("id", "home"),
        fields.Text("name", "Home plot"),
        Place(fields),
        fields.Choice<Terrain>("terrain", Tokens.Terrains, Terrain.OpenCoast),
        TravelMinutes(fields),
        [.. fields.Words("codes", "[FLZ065]").Select(word => word.Text)])
    {
        Datum = fields.OptionalText("datum", "NAVD88"),
        GroundM = Length(fields, "ground", LowestGroundM, HighestGroundM),
    };

    private static GeoPoint Place(YamlFields fields)
    {
        var place = new GeoPoint(fields.Number("latitude", -90, 90, null, "30.1"), fields.Number("longitude", -180, 180, null, "-84.2"));
        if (place is { LatDeg: 0, LonDeg: 0 }) fields.Fault("latitude", "and longitude are both 0, a place in the sea; write the garden's own");
        return place.LonDeg == -180 ? place with { LonDeg = 180 } : place;
    }

    private Dictionary<string, int> TravelMinutes(YamlFields fields)
    {
        var minutes = new Dictionary<string, int>();
        if (fields.OpenMap("travel_minutes", "travel_minutes", "{allotment: 8}") is not { } travel) return minutes;

        foreach (var other in travel.Keys)
        {
            minutes[other] = travel.Whole(other, 0, MostTravelMinutes, null, "8");
            travelWays.Add((fields, travel.LineOf(other), other));
        }

        return minutes;
    }

    /// <summary>A way given in one direction holds for the other too.</summary>
    private static List<Site> WithWayBack(List<Site> sites) =>
        [.. sites.Select(site => site with { TravelMinutes = WayBack(site, sites) })];

    private static Dictionary<string, int> WayBack(Site site, List<Site> sites)
    {
        var minutes = new Dictionary<string, int>(site.TravelMinutes);
        foreach (var other in sites.Where(other => other.Id != site.Id))
        {
            if (other.TravelMinutes.TryGetValue(site.Id, out var back)) minutes.TryAdd(other.Id, back);
        }

        return minutes;
    }

    private List<Area> Areas(YamlFields top)
    {
        var areas = new List<Area>();
        foreach (var fields in top.Maps("areas", "area", GardenKeys.Area, "- {id: porch, name: Porch, site: home}", required: true))
        {
            areas.Add(Area(fields));
            Once(areaFields, areas[^1].Id, fields, "area");
            references.Add(new(fields, fields.LineOf("site"), "site", areas[^1].SiteId));
        }

        return areas;
    }

    private Area Area(YamlFields fields) => new Area(
        fields.Id("id", "porch"), fields.Text("name", "Porch"), fields.Text("site", "home"), fields.Choice<Exposure>("exposure", Tokens.Exposures, Exposure.Open))
    {
        GroundM = Length(fields, "ground", LowestGroundM, HighestGroundM),
        WaterM = Length(fields, "water", 0, FarthestM),
        NeighbourM = Length(fields, "neighbour", 0, FarthestM),
        GlassM = Length(fields, "glass", 0, FarthestM),
        Plot = Plot(fields),
    };

    private List<StorePlace> Stores(YamlFields top)
    {
        var stores = new List<StorePlace>();
        foreach (var fields in top.Maps("stores", "store", GardenKeys.Store, "- {id: shed, site: home, floor_m2: 4}"))
        {
            var id = fields.Id("id", "shed");
            stores.Add(new StorePlace(
                id, fields.OptionalText("name", "Shed") ?? Named(id), fields.Text("site", "home"),
                fields.OptionalNumber("floor_m2", 0, 1000, "2.5"), fields.OptionalNumber("volume_m3", 0, 1000, "2.5"))
            {
                DoorM = Length(fields, "door", 0.1, 20),
                RaisedM = Length(fields, "raised", -5, 20),
            });
            Once(storeFields, id, fields, "store");
            references.Add(new(fields, fields.LineOf("site"), "site", stores[^1].SiteId));
        }

        return stores;
    }
}
