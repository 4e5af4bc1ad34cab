using StormClock.Service.Books;
using StormClock.Service.Feeds;

namespace StormClock.Service.Settings;

/// <summary>Reads the list of feeds, in the settings and in preset files.</summary>
internal static class FeedsReader
{
    /// <summary>Name under which notes made by hand are heard.</summary>
    public const string Notes = "notes";

    private const int LongestCalmMinutes = 180;
    private const int LongestStormMinutes = 60;
    private const int ShortestMinutes = 2;
    private const string Example = "- {name: alerts, kind: list, at: \"https://alerts.example.org/feed.atom\"}";

    /// <summary>An advisory older than this is stale (science.md 4.2); the usual limit for an address with one message.</summary>
    private static readonly Duration MessageLife = Duration.FromHours(9);

    private static readonly string[] ForTheNetAlone = ["hosts", "follow", "contact"];

    private static readonly Dictionary<string, FeedKind> Kinds = new() { ["folder"] = FeedKind.Folder, ["url"] = FeedKind.Url, ["list"] = FeedKind.List };

    /// <summary>The pace of a mapping, key by key, where it has one of its own.</summary>
    public static FeedPace Pace(YamlFields fields, FeedPace usual)
    {
        var calm = fields.Whole("poll_calm_minutes", ShortestMinutes, LongestCalmMinutes, (int)usual.Calm.TotalMinutes, "30");
        var storm = fields.Whole("poll_storm_minutes", ShortestMinutes, LongestStormMinutes, Math.Min(calm, (int)usual.Storm.TotalMinutes), "10");
        if (storm > calm) fields.Fault("poll_storm_minutes", $"must not be longer than poll_calm_minutes ({calm}): a storm is no time to look less often");
        return new(Duration.FromMinutes(calm), Duration.FromMinutes(storm));
    }

    /// <summary>A mail address or an https address; null when there is none, or a fault is told.</summary>
    public static string? Contact(YamlFields fields)
    {
        if (fields.OptionalText("contact", "keeper@example.org") is not { Length: > 0 } text) return null;
        var isAddress = Uri.TryCreate(text, UriKind.Absolute, out var page) && page is { Scheme: "https", UserInfo: "" };
        if ((EmailAddress.IsPlain(text) || isAddress) && text.All(c => char.IsAscii(c) && c is not ('(' or ')' or '\\'))) return text;

        fields.Fault("contact", $"must be a plain mail address or an https address, not '{YamlFields.Shown(text)}'; the forecast offices are told it with each request");
        return null;
    }

    /// <param name="usual">The pace where a feed has none of its own.</param>
    /// <param name="contact">The contact where a feed has none of its own.</param>
    public static List<FeedSettings> Read(YamlFields top, FeedPace usual, string? contact)
    {
        var feeds = new List<FeedSettings>();
        foreach (var fields in top.Maps("feeds", "feed", SettingsKeys.Feed, Example))
        {
            var feed = (fields.Has("preset") ? Preset(fields) : One(fields)) with { Pace = Pace(fields, usual), Contact = Contact(fields) ?? contact };
            if (feeds.Exists(other => other.Name == feed.Name && feed.Name.Length > 0)) fields.Fault(fields.Has("preset") ? "preset" : "name", "is used by another feed too; give one of them another name");
            feeds.Add(feed);
        }

        return feeds;
    }

    private static FeedSettings Preset(YamlFields fields)
    {
        foreach (var key in SettingsKeys.Feed.Except(["preset", "contact", "poll_calm_minutes", "poll_storm_minutes"]).Where(fields.Has))
            fields.Fault(key, "is given by the preset; take it out, or write the feed without 'preset'");
        var name = fields.Id("preset", "us");
        return new(name, FeedKind.Preset, name);
    }

    private static FeedSettings One(YamlFields fields)
    {
        var kind = fields.Choice<FeedKind>("kind", Kinds, null);
        var feed = new FeedSettings(fields.Text("name", "alerts"), kind, fields.Text("at", "https://alerts.example.org/feed.atom"))
        {
            Hosts = [.. fields.Words("hosts", "[data.example.org]").Select(host => Host(fields, host)).OfType<string>()],
            Follow = fields.OptionalText("follow", "properties/forecastGridData")?.Split('/') ?? [],
            SignedBy = fields.OptionalText("signed_by", "/etc/stormclock/issuer.pem") is { } pem ? new(pem, fields.LineOf("signed_by")) : null,
            StaleAfter = fields.OptionalNumber("stale_hours", 0.5, 24 * 30, "9") is { } hours ? Duration.FromHours(hours) : kind == FeedKind.Url ? MessageLife : null,
        };
        if (feed is { SignedBy: not null, Follow.Count: > 0 }) fields.Fault("signed_by", "is for sources of CAP alerts; an address that is followed brings none");
        if (feed.Name == Notes) fields.Fault("name", "is taken by the notes made by hand; choose another");
        if (kind == FeedKind.Folder)
        {
            foreach (var key in ForTheNetAlone.Where(fields.Has)) fields.Fault(key, "is of no use for a folder; take it out");
        }
        else
        {
            if (feed.At.Length > 0 && !IsFetchable(feed.At))
                fields.Fault("at", "must begin with https:// (or http:// for this box itself): an alert that anybody on the way can change is no alert");
            if (kind == FeedKind.List && fields.Has("follow")) fields.Fault("follow", "is for an address with one message; a list names its messages by itself");
        }

        return feed;
    }

    private static string? Host(YamlFields fields, Placed word)
    {
        if (Uri.TryCreate($"https://{word.Text}", UriKind.Absolute, out var made) && made.UserInfo.Length == 0 && made.AbsolutePath == "/" && made.Query.Length == 0 && made.Fragment.Length == 0 && !word.Text.Contains('/'))
            return made.Authority;

        fields.FaultAt(word.Line, "hosts", $"must hold names of hosts such as data.example.org, not '{YamlFields.Shown(word.Text)}'");
        return null;
    }

    private static bool IsFetchable(string text) =>
        Uri.TryCreate(text.Replace(FeedPresets.Lat, "0", StringComparison.Ordinal).Replace(FeedPresets.Lon, "0", StringComparison.Ordinal), UriKind.Absolute, out var at)
        && at.UserInfo.Length == 0 && (at.Scheme == "https" || (at.Scheme == "http" && at.IsLoopback));
}
