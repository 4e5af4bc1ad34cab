using StormClock.Service.Feeds.Signatures;

namespace StormClock.Service.Feeds.Web;

/// <summary>Who is asking for what: the part of a feed's settings that each request needs.</summary>
/// <param name="Hosts">Hosts beside its own that its redirects and links may lead to, with a port where it is not the usual one.</param>
/// <param name="Contact">Told to the server with every request, so that its keepers know whom to write to; null for none.</param>
public sealed record FeedSource(string Name, FeedPace Pace, IReadOnlyList<string> Hosts, string? Contact, Duration? StaleAfter)
{
    /// <summary>Who must have signed its messages; null where that is not asked.</summary>
    public FeedSigners? Signers { get; init; }

    /// <summary>
    /// Why an address that a server named must not be asked; null when it may. Only https, or plain http on this box where the
    /// feed itself is such; only the feed's own host and those its settings list.
    /// </summary>
    /// <param name="from">The address in the settings.</param>
    public string? Refusal(Uri from, Uri to)
    {
        if (to.Scheme != "https" && !(to is { Scheme: "http", IsLoopback: true } && from is { Scheme: "http", IsLoopback: true })) return $"leads to {to.Scheme}, not https";
        if (to.UserInfo.Length > 0) return "leads to an address with a user in it";
        return IsSame(to.Authority, from.Authority) || Hosts.Any(host => IsSame(to.Authority, host))
            ? null
            : $"leads to the host {to.Authority}; add it to the feed's hosts if it is meant so";
    }

    private static bool IsSame(string one, string other) => one.Equals(other, StringComparison.OrdinalIgnoreCase);
}
