using StormClock.Service.Books;

namespace StormClock.Service.Settings;

/// <summary>An address outside that is asked as a sign of life.</summary>
/// <param name="Url">https, or http on this box itself.</param>
public sealed record HeartbeatSettings(Uri Url, Duration Every);

/// <summary>The sign of life.</summary>
public sealed partial class SettingsReader
{
    private const int UsualHeartbeatMinutes = 5;

    /// <summary>The address may itself be a secret, so no fault repeats it.</summary>
    private static HeartbeatSettings? Heartbeat(YamlFields top)
    {
        if (top.Map("heartbeat", "heartbeat", SettingsKeys.Heartbeat, "{url: \"https://watch.example.org/my-box\", every_minutes: 5}") is not { } fields) return null;

        var text = fields.Text("url", "https://watch.example.org/my-box");
        var every = Duration.FromMinutes(fields.Whole("every_minutes", 1, 1440, UsualHeartbeatMinutes, "5"));
        if (Uri.TryCreate(text, UriKind.Absolute, out var url) && url is { UserInfo: "", Fragment: "" } && (url.Scheme == "https" || (url.Scheme == "http" && url.IsLoopback))) return new(url, every);

        if (text.Length > 0) fields.Fault("url", "must begin with https:// (or http:// for this box itself) and hold no user name");
        return null;
    }
}
