using System.Globalization;
using System.Xml.Linq;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.AviationAdvisory;

/// <summary>
/// Reads a tropical cyclone advisory for aviation in XML (IWXXM, any year's version), alone or as the one in a bulletin. Elements
/// are known by local name below a root of the namespace http://icao.int/iwxxm/.
/// </summary>
internal static class IwxxmReader
{
    public const string Namespace = "http://icao.int/iwxxm/";

    private const string RootName = "TropicalCycloneAdvisory";

    /// <summary>What one of a unit of speed is in knots.</summary>
    private static readonly Dictionary<string, double> SpeedUnits = new(StringComparer.Ordinal) { ["m/s"] = 1 / Wind.MpsPerKt, ["[kn_i]"] = 1, ["km/h"] = 1 / (3.6 * Wind.MpsPerKt) };

    public static ReadResult<CycloneAdvisory> Read(ReadOnlyMemory<byte> bytes)
    {
        var xml = AviationXml.Root(bytes);
        if (xml.Value is not { } root) return ReadResult.Bad<CycloneAdvisory>(xml.Faults);
        var found = root.DescendantsAndSelf().Where(one => one.Name.LocalName == RootName && one.Name.NamespaceName.StartsWith(Namespace, StringComparison.Ordinal)).Take(2).ToList();
        return found.Count == 1
            ? ReadAdvisory(found[0])
            : new ReadFault(root.Name.LocalName, found.Count == 0 ? "this is an XML document of the aviation weather exchange, but no tropical cyclone advisory" : "holds several advisories; give each by itself", AviationXml.LineOf(root));
    }

    private static ReadResult<CycloneAdvisory> ReadAdvisory(XElement advisory)
    {
        if ((string?)advisory.Attribute("permissibleUsage") is { } usage && usage != "OPERATIONAL") return Fault(advisory, $"is marked {usage}; only operational advisories are read");
        var faults = new List<ReadFault>();
        var issued = Time(Child(advisory, "issueTime"), advisory, "issueTime", faults);
        var name = Text(advisory, "tropicalCycloneName", "name", faults);
        var centre = Text(advisory, "issuingTropicalCycloneAdvisoryCentre", "designator", faults);
        var number = Text(advisory, null, "advisoryNumber", faults);
        if (Child(advisory, "observation") is not { } observation) faults.Add(Fault(advisory, "has no observation"));
        else if (Point(observation, faults) is not { Centre: not null } now) faults.Add(Fault(observation, "has no position"));
        else
        {
            var forecast = advisory.Elements().Where(one => one.Name.LocalName == "forecast" && one.HasElements).Select(one => Point(one, faults)).OfType<AviationPoint>().ToList();
            var corrected = (string?)advisory.Attribute("reportStatus") is "CORRECTION";
            if (faults.Count == 0 && issued is { } at) return new AviationDraft(centre, name.ToUpperInvariant(), number[(number.IndexOf('/', StringComparison.Ordinal) + 1)..].TrimStart('0'), at, now, forecast, corrected).Finish();
        }

        return ReadResult.Bad<CycloneAdvisory>(faults);
    }

    /// <summary>Time, position and wind of an observation or a forecast; position and wind may be missing.</summary>
    private static AviationPoint? Point(XElement conditions, List<ReadFault> faults)
    {
        var time = Time(Child(conditions, "phenomenonTime"), conditions, "phenomenonTime", faults);
        var (centre, wind) = (Centre(conditions, faults), WindKt(conditions, faults));
        return time is { } valid ? new AviationPoint(valid, centre, wind) : null;
    }

    /// <summary>"27.1 -73.1", latitude first, as axisLabels says.</summary>
    private static GeoPoint? Centre(XElement conditions, List<ReadFault> faults)
    {
        if (Child(conditions, "tropicalCyclonePosition") is not { } position || Child(position, "pos") is not { } pos) return null;
        var labels = (string?)Child(position, "Point")?.Attribute("axisLabels") ?? "Lat Long";
        var numbers = pos.Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Number).ToList();
        if (labels.StartsWith("Lat", StringComparison.OrdinalIgnoreCase) && numbers is [{ } lat, { } lon] && Math.Abs(lat) <= 90 && Math.Abs(lon) <= 180) return new GeoPoint(lat, lon);
        faults.Add(Fault(pos, "is no latitude and longitude on the globe, in this order"));
        return null;
    }

    private static double? WindKt(XElement conditions, List<ReadFault> faults)
    {
        if (Child(conditions, "maximumSurfaceWindSpeed") is not { } wind || wind.Value.Trim().Length == 0) return null;
        var unit = (string?)wind.Attribute("uom") ?? "";
        if (!SpeedUnits.TryGetValue(unit, out var factor)) faults.Add(Fault(wind, $"the unit \"{(unit.Length <= 30 ? unit : unit[..30])}\" is none of a wind speed; known are {string.Join(", ", SpeedUnits.Keys)}"));
        else if (Number(wind.Value) is not { } speed || speed < 0) faults.Add(Fault(wind, "is no wind speed"));
        else return speed * factor;
        return null;
    }

    private static Instant? Time(XElement? holder, XElement above, string name, List<ReadFault> faults)
    {
        var time = holder is null ? null : CapTime.Parse(Child(holder, "timePosition")?.Value.Trim() ?? "");
        if (time is null) faults.Add(Fault(holder ?? above, $"{name} is no time such as 2004-09-25T18:00:00Z"));
        return time;
    }

    private static string Text(XElement advisory, string? holder, string name, List<ReadFault> faults)
    {
        var above = holder is null ? advisory : Child(advisory, holder);
        var text = above is null ? "" : Child(above, name)?.Value.Trim() ?? "";
        if (text.Length is 0 or > 100) faults.Add(Fault(above ?? advisory, $"{name} is missing or empty"));
        return text;
    }

    /// <summary>The first element of that name anywhere below.</summary>
    private static XElement? Child(XElement above, string name) => above.Descendants().FirstOrDefault(one => one.Name.LocalName == name);

    private static double? Number(string text) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    private static ReadFault Fault(XElement at, string reason) => new(at.Name.LocalName, reason, AviationXml.LineOf(at));
}
