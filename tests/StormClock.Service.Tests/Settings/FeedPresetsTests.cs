using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Settings;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Settings;

public class FeedPresetsTests
{
    private static readonly string Shipped = Path.Combine(ConfigFiles.Folder, "feeds");

    private static readonly GardenBook Quay = GardenReader.Read(SampleBook.Good, "quay").Value!;

    [Fact]
    public void Expand_ShippedPreset_AsksForEachPlaceAndBothOceans()
    {
        var feeds = FeedPresets.Expand(Feeds("contact: keeper@example.org\nfeeds: [{preset: us}, {name: own, kind: folder, at: incoming}]"), Shipped, [Quay, Quay]).Value!;

        var places = Quay.Sites.Select(site => site.At).Distinct().Count();
        Assert.Equal((2 * places) + 3, feeds.Count);
        Assert.Equal("own", feeds[^1].Name);
        Assert.All(feeds.SkipLast(1), feed => Assert.Equal("keeper@example.org", feed.Contact));
        Assert.All(feeds.SkipLast(1), feed => Assert.True(new Uri(feed.At) is { Scheme: "https" }));
        Assert.DoesNotContain(feeds, feed => feed.At.Contains('{'));
        var at = Quay.Sites[0].At;
        Assert.Contains(feeds, feed => feed.At.EndsWith(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"point={at.LatDeg:0.###},{at.LonDeg:0.###}"), StringComparison.Ordinal));
        Assert.Equal(["properties", "forecastGridData"], feeds.First(feed => feed.Follow.Count > 0).Follow);
    }

    [Fact]
    public void Expand_NoGardens_AsksForWhatNeedsNoPlace() =>
        Assert.Equal(2, FeedPresets.Expand(Feeds("contact: keeper@example.org\nfeeds: [{preset: us}]"), Shipped, []).Value!.Count);

    [Fact]
    public void Expand_UnknownPresetWithoutContact_TellsBoth()
    {
        var faults = FeedPresets.Expand(Feeds("feeds: [{preset: atlantis}]"), Shipped, [Quay]).Faults;

        Assert.Equal(2, faults.Count);
        Assert.Contains(faults, fault => fault.File == Path.Combine(Shipped, "atlantis.yaml"));
        Assert.Contains(faults, fault => fault.Reason.Contains("needs a contact"));
    }

    [Fact]
    public void Expand_FaultsInThePresetFile_AreToldWithFileAndLine()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("us.yaml"), "feeds:\n  - {name: a, kind: list, at: \"http://a.example.org/{lat}\"}\n  - {name: b, kind: lst, at: \"https://b.example.org\"}\n");

        var faults = FeedPresets.Expand(Feeds("contact: keeper@example.org\nfeeds: [{preset: us}]"), folder.Path, [Quay]).Faults;

        Assert.Equal([2, 3], faults.Select(fault => fault.Line));
        Assert.All(faults, fault => Assert.Equal(folder.File("us.yaml"), fault.File));
    }

    private static IReadOnlyList<FeedSettings> Feeds(string yaml) => SettingsReader.Read(yaml).Value!.Feeds;
}
