using StormClock.Core;

namespace StormClock.Service.Settings;

/// <summary>One person's messages are also posted to a gateway of their own.</summary>
/// <param name="Person"><c>garden/person</c>.</param>
/// <param name="SecretFile">File whose first line is the signing secret; null when it is kept elsewhere.</param>
/// <param name="SecretVariable">Environment variable that holds it; null when it is kept elsewhere.</param>
/// <param name="Line">Where it stands in the settings, for faults found later.</param>
public sealed record WebhookSettings(string Person, Uri Url, string? SecretFile, string? SecretVariable, int Line);

/// <summary>Fetches a webhook's signing secret from where the settings say it is kept.</summary>
public static class WebhookSecret
{
    /// <summary>A guessable secret lets anybody forge messages, e.g. to stop work or to leave.</summary>
    public const int ShortestSecret = 16;

    /// <returns>The secret; a fault that names the setting, never the value, when there is none to be had.</returns>
    /// <param name="variable">Reads an environment variable.</param>
    public static ReadResult<Secret> Find(WebhookSettings webhook, Func<string, string?> variable)
    {
        var (place, text) = webhook.SecretVariable is { } name
            ? ($"the environment variable {name}", variable(name))
            : ($"the first line of {webhook.SecretFile}", Books.TextFile.Read(webhook.SecretFile!).Value?.Split('\n')[0].TrimEnd('\r'));
        return text is { Length: >= ShortestSecret }
            ? new Secret(text)
            : ReadFault.At(webhook.Line, $"{place} must hold the secret of the webhook of {webhook.Person}, {ShortestSecret} or more characters; it is missing, unreadable or too short");
    }
}
