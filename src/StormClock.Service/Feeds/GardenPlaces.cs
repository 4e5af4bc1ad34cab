using System.Globalization;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Service.Desk;
using StormClock.Service.Store;

namespace StormClock.Service.Feeds;

/// <summary>
/// Which of a whole country's alerts are worth keeping: those that may concern a garden. Without any garden all of them are,
/// since a book may merely be spoilt.
/// </summary>
public sealed class GardenPlaces(GardenShelf shelf)
{
    /// <summary>Differs when a site has come, moved, or got other codes, so that what was passed over must be looked at again.</summary>
    public string Mark => Fingerprint.Of([.. Sites.Select(site => string.Create(CultureInfo.InvariantCulture, $"{site.At.LatDeg:R} {site.At.LonDeg:R} {string.Join(' ', site.Codes)}")).Order(StringComparer.Ordinal)]);

    private List<Site> Sites => [.. shelf.Books.SelectMany(book => book.Sites)];

    public bool MayConcern(Advisory advisory) =>
        advisory is not AlertMessage alert || Sites is not { Count: > 0 } sites || AlertPlace.MayConcern(alert, sites).Any();
}
