namespace StormClock.Service.Settings;

/// <summary>Every key the settings may have, by the mapping it stands in.</summary>
internal static class SettingsKeys
{
    public static readonly string[] All = ["mail", "pages", "data_folder", "feeds", "contact", "quiet_hours", "poll_calm_minutes", "poll_storm_minutes", "webhooks", "replies", "heartbeat"];

    public static readonly string[] Mail =
        ["host", "port", "security", "user", "password_file", "password_env", "from", "from_name", "trusted_certificate_file"];

    public static readonly string[] Replies =
        ["host", "port", "security", "user", "password_file", "password_env", "address", "folder", "move_to", "poll_minutes", "trusted_certificate_file"];

    public static readonly string[] Pages = ["listen", "address"];

    public static readonly string[] Feed = ["name", "kind", "at", "preset", "hosts", "follow", "stale_hours", "signed_by", "contact", "poll_calm_minutes", "poll_storm_minutes"];

    public static readonly string[] Webhook = ["person", "url", "secret_file", "secret_env"];

    public static readonly string[] Heartbeat = ["url", "every_minutes"];

    public static readonly string[] QuietHours = ["from", "to", "zone"];
}
