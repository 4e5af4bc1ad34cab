using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// Keeps the members of the newest advisories at each place, so that a decision made again on the same news costs nothing. It
/// never changes a result.
/// </summary>
public sealed class MemberMemory
{
    private const int Most = 64;
    private readonly Dictionary<(string Advisory, GeoPoint At, string Thresholds), WindMembers> known = [];
    private readonly Queue<(string, GeoPoint, string)> order = [];

    public WindMembers Members(CycloneAdvisory advisory, Site site, IReadOnlyList<double> thresholdsKt)
    {
        var key = (advisory.Id, site.At, string.Join(' ', thresholdsKt.Select(kt => kt.ToString("R", System.Globalization.CultureInfo.InvariantCulture))));
        if (known.TryGetValue(key, out var members)) return members;
        members = WindOutlook.At(advisory, site.At, thresholdsKt);
        known[key] = members;
        order.Enqueue(key);
        if (order.Count > Most) known.Remove(order.Dequeue());
        return members;
    }
}
