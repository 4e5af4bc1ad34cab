using StormClock.Core.Garden;
using StormClock.Service.Books.Counties;

namespace StormClock.Service.Commands;

/// <summary>Proposes codes for sites that list none, as lines to be put into the book once they have been checked.</summary>
internal static class CodesReport
{
    public static IEnumerable<string> Of(GardenBook book)
    {
        foreach (var site in book.Sites.Where(site => site.Codes.Count == 0))
        {
            var near = NearCounties.Of(site.At);
            if (near.Count == 0) continue;
            yield return $"  {site.Name} has no codes, so an alert that names counties or zones alone only may concern it. One of these is likely its county;";
            yield return "  the nearest middle is not always the right one: look it up at the weather office, and add the forecast zone that its page names (such as FLZ065)";
            foreach (var county in near) yield return $"    codes: [{county.Ugc}, \"{county.Same}\"]   # {county.Nmi:0} n mi to the middle of its people";
        }
    }
}
