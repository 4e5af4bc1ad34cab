using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Service.Books;

/// <summary>Sites, areas, stores, supplies and wind limits.</summary>
public sealed partial class GardenReader
{
    private const int MostTravelMinutes = 600;

    private List<Site> Sites(YamlFields top)
    {
        var sites = new List<Site>();
        foreach (var fields in top.Maps("sites", "site", GardenKeys.Site, "- {id: home, name: Home, latitude: 30.1, longitude: -84.2}", required: true))
        {
            sites.Add(Site(fields));
            Once(siteLines, sites[^1].Id, fields, "site");
        }

        return WithWayBack(sites);
    }

    /// <summary>Terrain and exposure that are not written are the windiest: a gap in the survey must not look like shelter.</summary>
    private Site Site(YamlFields fields) => new(
        fields.Id("id", "home"),
        fields.Text("name", "Home plot"),
        Place(fields),
        fields.Choice<Terrain>("terrain", Tokens.Terrains, Terrain.OpenCoast),
        TravelMinutes(fields),
        [.. fields.Words("codes", "[FLZ065]").Select(word => word.Text)]);

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
            travelLines.Add((travel.LineOf(other), fields.Subject, other));
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
            areas.Add(new Area(fields.Id("id", "porch"), fields.Text("name", "Porch"), fields.Text("site", "home"), fields.Choice<Exposure>("exposure", Tokens.Exposures, Exposure.Open)));
            Once(areaLines, areas[^1].Id, fields, "area");
            references.Add((fields.LineOf("site"), fields.Subject, "site", areas[^1].SiteId));
        }

        return areas;
    }

    private List<StorePlace> Stores(YamlFields top)
    {
        var stores = new List<StorePlace>();
        foreach (var fields in top.Maps("stores", "store", GardenKeys.Store, "- {id: shed, site: home, floor_m2: 4}"))
        {
            var id = fields.Id("id", "shed");
            stores.Add(new StorePlace(
                id, fields.OptionalText("name", "Shed") ?? Named(id), fields.Text("site", "home"), Space(fields, "floor_m2"), Space(fields, "volume_m3")));
            Once(storeLines, id, fields, "store");
            references.Add((fields.LineOf("site"), fields.Subject, "site", stores[^1].SiteId));
        }

        return stores;
    }

    private static double? Space(YamlFields fields, string key) => fields.Has(key) ? fields.Number(key, 0, 1000, null, "2.5") : null;

    private List<Supply> Supplies(YamlFields top)
    {
        var supplies = new List<Supply>();
        foreach (var fields in top.Maps("supplies", "supply", GardenKeys.Material, "- {material: rope, quantity: 30, unit: m}"))
        {
            var (material, quantity, unit) = Measured(fields);
            supplies.Add(new Supply(material, quantity, unit));
            Once(supplyLines, material, fields, "supply");
        }

        return supplies;
    }

    private static Dictionary<WorkClass, WorkLimit> Limits(YamlFields top)
    {
        var limits = new Dictionary<WorkClass, WorkLimit>(WorkLimit.Defaults);
        if (top.Map("limits", "limits", [.. Tokens.Classes.Keys], "{ladder: {sustained: 18 mph, gust: 24 mph}}") is not { } written) return limits;

        foreach (var (token, workClass) in Tokens.Classes)
        {
            if (written.Map(token, $"the {token} limit", GardenKeys.Limit, "{sustained: 18 mph, gust: 24 mph}") is { } limit)
                limits[workClass] = Limit(limit, WorkLimit.Defaults[workClass]);
        }

        return limits;
    }

    /// <summary>No limit may pass 34 kt sustained, where nobody works outside (product.md 2), or a gust of 50 kt (C).</summary>
    private static WorkLimit Limit(YamlFields fields, WorkLimit usual)
    {
        var limit = new WorkLimit(
            fields.Amount("sustained", QuantityKind.WindSpeed, 1, Wind.KtToMps(Wind.GaleKt), "sustained") ?? usual.SustainedMps,
            fields.Amount("gust", QuantityKind.WindSpeed, 1, Wind.KtToMps(50), "gust") ?? usual.GustMps);
        if (limit.GustMps < limit.SustainedMps) fields.Fault(fields.Has("gust") ? "gust" : "sustained", "leaves the gust limit below the sustained one; write both");
        return limit;
    }
}
