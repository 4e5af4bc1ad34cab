using System.Globalization;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Feeds;

namespace StormClock.Service.Settings;

/// <summary>
/// Puts the feeds of a preset, a file such as <c>config/feeds/us.yaml</c>, in the place of its name. An address with
/// <c>{lat}</c> and <c>{lon}</c> becomes one feed for each place that a garden has.
/// </summary>
internal static class FeedPresets
{
    public const string Lat = "{lat}";
    public const string Lon = "{lon}";

    private static readonly string[] Keys = ["feeds"];

    /// <summary>In the order of the settings, presets unfolded where they stood.</summary>
    /// <param name="folder">Where the preset files lie.</param>
    /// <param name="gardens">Gardens served; practice gardens have no weather.</param>
    /// <returns>Every fault of every preset file, each with its file.</returns>
    public static ReadResult<IReadOnlyList<FeedSettings>> Expand(IReadOnlyList<FeedSettings> feeds, string folder, IReadOnlyList<GardenBook> gardens)
    {
        var faults = new List<ReadFault>();
        var all = new List<FeedSettings>();
        foreach (var feed in feeds)
        {
            if (feed.Kind == FeedKind.Preset) all.AddRange(Unfold(feed, Path.Combine(folder, feed.At + ".yaml"), gardens, faults));
            else all.Add(feed);
        }

        foreach (var twice in all.GroupBy(feed => feed.Name).Where(same => same.Count() > 1))
            faults.Add(new("feeds", $"two feeds are named '{twice.Key}', one of them by a preset; rename the other"));
        return faults.Count > 0 ? ReadResult.Bad<IReadOnlyList<FeedSettings>>(faults) : ReadResult.Good<IReadOnlyList<FeedSettings>>(all);
    }

    private static IEnumerable<FeedSettings> Unfold(FeedSettings preset, string file, IReadOnlyList<GardenBook> gardens, List<ReadFault> faults)
    {
        if (preset.Contact is null) faults.Add(new("feeds", $"preset '{preset.Name}' needs a contact: its offices ask to be told whom to write to; add contact: keeper@example.org"));
        var text = TextFile.Read(file);
        var list = new FaultList(file);
        var tree = text.Value is { } found ? YamlTreeReader.Read(found, list) : null;
        IReadOnlyList<FeedSettings> feeds = tree is null ? [] : FeedsReader.Read(new YamlFields(tree, "the preset", Keys, list), preset.Pace, preset.Contact);
        faults.AddRange(text.Faults.Select(fault => fault with { File = file }));
        faults.AddRange(list.InOrder());
        return feeds.SelectMany(feed => AtPlaces(feed, gardens));
    }

    private static IEnumerable<FeedSettings> AtPlaces(FeedSettings feed, IReadOnlyList<GardenBook> gardens)
    {
        if (!feed.At.Contains(Lat, StringComparison.Ordinal) && !feed.At.Contains(Lon, StringComparison.Ordinal)) return [feed];
        return gardens.SelectMany(garden => garden.Sites)
            .Select(site => (Lat: Degrees(site.At.LatDeg), Lon: Degrees(site.At.LonDeg)))
            .Distinct()
            .Select(place => feed with
            {
                Name = $"{feed.Name} {place.Lat},{place.Lon}",
                At = feed.At.Replace(Lat, place.Lat, StringComparison.Ordinal).Replace(Lon, place.Lon, StringComparison.Ordinal),
            });
    }

    /// <summary>Three decimals, some 100 m: finer asks for nothing better, and tells the office less of where somebody lives.</summary>
    private static string Degrees(double degrees) => degrees.ToString("0.###", CultureInfo.InvariantCulture);
}
