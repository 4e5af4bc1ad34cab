using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;

namespace StormClock.Core.Tests.Formats;

/// <summary>Every real list at hand. Counts and identities were taken from the files with grep.</summary>
public class RealFeedTests
{
    [Theory]
    [InlineData("cap-feeds/google-canada_signed.atom", 1, 1, 0, "tag:rss1.naad-adna.pelmorex.com,2013-08-19:feed.atom/2.49.0.1.124.8bc841b8.2013 2013-08-19T11:56:00Z")]
    [InlineData("cap-feeds/google-ny_index.rss", 2, 0, 2, "NYAlert-ALLHAZALERT-3167113 2011-02-04T20:20:00Z")]
    [InlineData("cap-feeds/google-weather.atom", 1, 1, 1, "http://www.weather.gov/alerts-beta/wwacapget.php?x=DC20120829202900LWXAirQualityAlertLWX20120831040000DC 2012-08-29T20:29:00Z")]
    [InlineData("cap-feeds/google-weather_index.atom", 2, 0, 2, "http://www.weather.gov/alerts-beta/wwacapget.php?x=CT20100831030400OKXAirQualityAlertOKX20100901031500CT 2010-08-31T03:04:00Z")]
    [InlineData("cap-feeds/meteoalarm-atom-france-2022.xml", 12, 0, 12, "https://feeds.meteoalarm.org/api/v1/warnings/feeds-france/04d497d4-d114-4d6b-93ba-13fa7ed577fe?index_info=1&index_area=5&index_geocode=0 2022-12-07T15:00:58Z")]
    [InlineData("cap-feeds/meteoalarm-atom-germany-2023.xml", 381, 0, 381, "https://feeds.meteoalarm.org/api/v1/warnings/feeds-germany/4e213aa1-38e2-45e0-9ec2-4ca8f2b19784?index_info=1&index_area=3&index_geocode=0 2023-04-28T13:07:00Z")]
    [InlineData("cap-feeds/nws-atom-national.xml", 215, 0, 215, "https://alerts.weather.gov/cap/wwacapget.php?x=AK125867734B60.SpecialWeatherStatement.12586773BBE0AK.AFGSPSAFG.88fff69aab9bb2a74b526abf4c216ea1 2017-09-02T03:12:00Z")]
    [InlineData("cap-feeds/nws-atom-small.xml", 1, 0, 1, "https://alerts.weather.gov/cap/wwacapget.php?x=AK125867734B60.SpecialWeatherStatement.12586773BBE0AK.AFGSPSAFG.88fff69aab9bb2a74b526abf4c216ea1 2017-09-02T03:12:00Z")]
    [InlineData("cap-feeds/nws-atom-us-2020.xml", 77, 0, 77, "https://alerts.weather.gov/cap/wwacapget.php?x=AR125F6525A964.FloodWarning.125F69AAE300AR.SHVFLSSHV.aeea11ff746252d3e4dcf9d5ba71c6c5 2020-09-28T16:01:00Z")]
    [InlineData("cap-invalid/google-empty_weather_index.atom.xml", 0, 0, 0, null)]
    [InlineData("cap-invalid/google-no_id.atom.xml", 1, 0, 0, "Air Quality Alert issued August 29 at 4:29PM EDT expiring August 31 at 12:00AM EDT by NWS Baltimore/Washington http://www.erh.noaa.gov/lwx/ 2010-08-29T20:29:00Z")]
    [InlineData("nhc-rss/al072022-022.index.xml", 9, 3, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202209191733 2022-09-19T17:33:02Z")]
    [InlineData("nhc-rss/al092022-008.index.xml", 25, 12, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202209242332 2022-09-24T23:32:07Z")]
    [InlineData("nhc-rss/al092022-020.index.xml", 17, 3, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202209272349 2022-09-27T23:49:16Z")]
    [InlineData("nhc-rss/al092024-001.index.xml", 6, 3, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202409231132 2024-09-23T11:32:07Z")]
    [InlineData("nhc-rss/al092024-013.index.xml", 29, 6, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202409261124 2024-09-26T11:24:56Z")]
    [InlineData("nhc-rss/al092024-018.index.xml", 22, 9, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202409271752 2024-09-27T17:52:31Z")]
    [InlineData("nhc-rss/al102023-012A.index.xml", 32, 9, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202308291728 2023-08-29T17:28:29Z")]
    [InlineData("nhc-rss/al132025-024.index.xml", 7, 3, 0, "https://www.nhc.noaa.gov/gtwo.php?basin=atlc&202510270528 2025-10-27T05:28:58Z")]
    [InlineData("nhc-currentstorms/al022024-020.CurrentStorms.json", 3, 0, 3, "al022024/forecastAdvisory/020 2024-07-03T14:46:27Z")]
    [InlineData("nhc-currentstorms/al092024-003.CurrentStorms.json", 6, 0, 6, "al092024/forecastAdvisory/003 2024-09-24T02:38:36Z")]
    [InlineData("nhc-currentstorms/al092024-013.CurrentStorms.json", 9, 0, 9, "al092024/forecastAdvisory/013 2024-09-26T14:53:58Z")]
    [InlineData("nhc-currentstorms/al102023-008.CurrentStorms.json", 9, 0, 9, "al082023/forecastAdvisory/031 2023-08-28T09:00:00Z")]
    [InlineData("nhc-currentstorms/al102023-012A.CurrentStorms.json", 12, 0, 12, "al112023/forecastAdvisory/001 2023-08-29T15:00:00Z")]
    [InlineData("nws-api/alerts-zone-2019-a.json", 1, 1, 0, "NWS-IDP-PROD-3965873-3369046 2019-12-20T21:34:00Z")]
    [InlineData("nws-api/alerts-active-2025-12-15-northwest.json", 529, 529, 0, "urn:oid:2.49.0.1.840.0.ec697a7e3e7d106516aa91b3e6496b24aaec70fb.001.1 2025-12-15T21:53:00Z")]
    public void Reading_RealList_GivesEveryEntry(string path, int entries, int messages, int links, string? first)
    {
        var bytes = File.ReadAllBytes(Path.Combine(Shared.Folder(Path.GetDirectoryName(path)!), Path.GetFileName(path)));
        Assert.True(FeedIndexReader.IsList(bytes));
        var result = FeedIndexReader.Read(bytes);
        Assert.True(result.IsGood, string.Join('\n', result.Faults));
        var list = result.Value!.Entries;

        Assert.Equal((entries, messages, links), (list.Count, list.Count(one => !one.Message.IsEmpty), list.Count(one => one.Link is not null)));
        Assert.Equal(entries, list.Select(one => one.Id).Distinct().Count());
        Assert.Equal(first, list is [var one, ..] ? one.Id : null);
        Assert.All(
            list.Where(one => !one.Message.IsEmpty).Select(one => MessageReader.Read(one.Message)),
            message => Assert.True(message.IsGood, string.Join('\n', message.Faults)));
    }

    /// <summary>What is no list must not be taken for one, or its message would be lost.</summary>
    [Theory]
    [InlineData("cap")]
    [InlineData("cap-standard-examples")]
    [InlineData("iwxxm")]
    [InlineData("nws-text-vtec")]
    [InlineData("nhc-tcm-old-formats")]
    public void Asking_RealMessages_SaysNoList(string folder) =>
        Assert.All(Shared.Files(folder), file => Assert.False(FeedIndexReader.IsList(File.ReadAllBytes(file)), file));

    [Theory]
    [InlineData("cap-invalid/google-invalid.xml")]
    [InlineData("cap-invalid/google-xee.xml")]
    [InlineData("cap-invalid/google-no_optional_fields.xml")]
    [InlineData("cap-invalid/taiwan-404-page-instead-of-cap.html")]
    [InlineData("nws-api/gridpoint-raw-GUM-47-48.json")]
    [InlineData("nws-api/forecast-GUM-47-48.json")]
    [InlineData("nws-api/points.json")]
    public void Asking_OtherRealFiles_SaysNoList(string path) =>
        Assert.False(FeedIndexReader.IsList(File.ReadAllBytes(Path.Combine(Shared.Folder(Path.GetDirectoryName(path)!), Path.GetFileName(path)))));

    /// <summary>Observations come as a list of features too; they are refused by name and not read as no alerts.</summary>
    [Fact]
    public void Reading_ListOfObservations_IsRefused()
    {
        var result = FeedIndexReader.Read(File.ReadAllBytes(Path.Combine(Shared.Folder("nws-api"), "observations-multiple.json")));
        Assert.Contains("no alert", Assert.Single(result.Faults).Reason);
    }

    /// <summary>24 September 2022: four storms in one channel, each with advisory and probabilities of its own.</summary>
    [Fact]
    public void Reading_ChannelWithFourStorms_GivesEachItsAdvisory()
    {
        var list = FeedIndexReader.Read(File.ReadAllBytes(Path.Combine(Shared.Folder("nhc-rss"), "al092022-008.index.xml"))).Value!;
        var advisories = list.Entries.Where(one => !one.Message.IsEmpty).Select(one => MessageReader.Read(one.Message).Value).OfType<CycloneAdvisory>();
        Assert.Equal([("AL072022", "42"), ("AL082022", "19"), ("AL092022", "8"), ("AL102022", "7")], advisories.Select(one => (one.StormId, one.Number)));
    }

    /// <summary>The same text from the channel and from the page is the same advisory.</summary>
    [Fact]
    public void Reading_BulletinFromChannel_IsTheOneFromItsPage()
    {
        var list = FeedIndexReader.Read(File.ReadAllBytes(Path.Combine(Shared.Folder("nhc-rss"), "al092022-020.index.xml"))).Value!;
        var fromChannel = list.Entries.Select(one => MessageReader.Read(one.Message).Value).OfType<CycloneAdvisory>().Single();
        var text = File.ReadAllText(Path.Combine(Shared.Folder("nhc-tcm"), "al092022-ian", "020.txt"));
        var page = System.Text.Encoding.UTF8.GetBytes($"<!DOCTYPE html><html><body><p>News</p><pre>{System.Net.WebUtility.HtmlEncode(text)}</pre></body></html>");
        var fromPage = Assert.IsType<CycloneAdvisory>(MessageReader.Read(page).Value);
        Assert.Equivalent(fromChannel, fromPage);
    }
}
