using StormClock.Service.Books;

namespace StormClock.Service.Settings;

/// <summary>Webhooks of people.</summary>
public sealed partial class SettingsReader
{
    /// <summary>Refused with a reason of its own, so it is not called unknown.</summary>
    private const string MisplacedSecret = "secret";

    private static List<WebhookSettings> Webhooks(YamlFields top)
    {
        var webhooks = new List<WebhookSettings>();
        foreach (var fields in top.Maps("webhooks", "webhook", [.. SettingsKeys.Webhook, MisplacedSecret], "- {person: my-garden/ada, url: \"https://gateway.example.org/ada\", secret_env: STORMCLOCK_WEBHOOK}"))
        {
            var person = fields.Text("person", "my-garden/ada");
            if (person.Length > 0 && !(person.Split('/') is [var garden, var id] && YamlFields.IsId(garden) && YamlFields.IsId(id)))
                fields.Fault("person", $"must be a garden's id, a slash and the person's id, such as my-garden/ada, not '{YamlFields.Shown(person)}'");
            if (person.Length > 0 && webhooks.Exists(other => other.Person == person)) fields.Fault("person", "has a webhook already; keep one, and let the gateway pass messages on");
            var webhook = new WebhookSettings(
                person, WebhookUrl(fields), fields.OptionalText("secret_file", "/etc/stormclock/webhook-secret"), fields.OptionalText("secret_env", "STORMCLOCK_WEBHOOK"), fields.Line);
            CheckSecret(fields);
            webhooks.Add(webhook);
        }

        return webhooks;
    }

    /// <summary>The address may itself be a secret, so no fault repeats it.</summary>
    private static Uri WebhookUrl(YamlFields fields)
    {
        var text = fields.Text("url", "https://gateway.example.org/ada");
        if (Uri.TryCreate(text, UriKind.Absolute, out var url) && url is { UserInfo: "", Fragment: "" } && (url.Scheme == "https" || (url.Scheme == "http" && url.IsLoopback))) return url;

        if (text.Length > 0) fields.Fault("url", "must begin with https:// (or http:// for this box itself) and hold no user name, so that nobody on the way reads or changes a message");
        return new("https://invalid.invalid");
    }

    private static void CheckSecret(YamlFields fields)
    {
        if (fields.Has(MisplacedSecret))
            fields.Fault(MisplacedSecret, "must not be written into this file; put it into a file of its own and name that under secret_file, or name a variable under secret_env");
        else if (fields.Has("secret_file") == fields.Has("secret_env"))
            fields.Fault("secret_env", fields.Has("secret_env") ? "and secret_file are both given; keep one" : "or secret_file is missing; messages are signed with a secret, so add one of them");
    }
}
