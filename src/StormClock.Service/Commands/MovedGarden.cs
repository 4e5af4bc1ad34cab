using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Service.Commands;

/// <summary>The same garden somewhere else, so that any storm can be tried on it.</summary>
internal static class MovedGarden
{
    /// <summary>The first site goes to the place; the others keep their distance from it.</summary>
    public static GardenBook To(GardenBook book, GeoPoint place)
    {
        var from = book.Sites[0].At;
        var stretch = Math.Cos(from.LatDeg * Math.PI / 180) / Math.Max(0.01, Math.Cos(place.LatDeg * Math.PI / 180));
        return book with
        {
            Sites = [.. book.Sites.Select(site => site with
            {
                At = new(
                    Math.Clamp(place.LatDeg + site.At.LatDeg - from.LatDeg, -90, 90),
                    Wrap(place.LonDeg + (Wrap(site.At.LonDeg - from.LonDeg) * stretch))),
                Codes = [],
            })],
        };
    }

    private static double Wrap(double degrees) => degrees - (360 * Math.Round(degrees / 360));
}
