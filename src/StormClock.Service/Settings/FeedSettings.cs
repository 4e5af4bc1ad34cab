using StormClock.Service.Feeds;

namespace StormClock.Service.Settings;

public enum FeedKind
{
    /// <summary>A folder of this box.</summary>
    Folder,

    /// <summary>An address that answers with one message.</summary>
    Url,

    /// <summary>An address that answers with a list of messages: Atom, RSS or JSON.</summary>
    List,

    /// <summary>A named set of feeds, kept in a file of its own and filled in with each garden's place.</summary>
    Preset,
}

/// <param name="Line">Where the settings name it, from 1.</param>
public sealed record SignerFile(string Path, int Line);

/// <param name="Name">Of a preset, its name.</param>
/// <param name="At">A folder path or an https address; of a preset, its name again.</param>
public sealed record FeedSettings(string Name, FeedKind Kind, string At)
{
    public FeedPace Pace { get; init; } = FeedPace.Usual;

    /// <summary>Hosts beside its own that redirects and links may lead to, with a port where it is not the usual one.</summary>
    public IReadOnlyList<string> Hosts { get; init; } = [];

    /// <summary>Told to the server; null for none.</summary>
    public string? Contact { get; init; }

    /// <summary>Content older than this is stale though the source answers; null where old content is nothing odd.</summary>
    public Duration? StaleAfter { get; init; }

    /// <summary>PEM file with the certificates of those who sign its alerts; null where signatures are not checked.</summary>
    public SignerFile? SignedBy { get; init; }

    /// <summary>Names of JSON properties, outermost first, under which the answer names the true address; empty where it is the message.</summary>
    public IReadOnlyList<string> Follow { get; init; } = [];
}
