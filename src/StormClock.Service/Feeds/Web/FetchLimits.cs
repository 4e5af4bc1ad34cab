namespace StormClock.Service.Feeds.Web;

/// <summary>How much patience and room one address is given. All conventions of this house.</summary>
public sealed record FetchLimits
{
    public static FetchLimits Usual { get; } = new();

    /// <summary>One try, from the name to the last byte.</summary>
    public TimeSpan Attempt { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>All tries and redirects of one address together.</summary>
    public TimeSpan Whole { get; init; } = TimeSpan.FromSeconds(45);

    /// <summary>Tries after the first.</summary>
    public int Retries { get; init; } = 2;

    /// <summary>Before the first further try; it doubles, with jitter.</summary>
    public TimeSpan RetryDelay { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>A server that asks for a longer pause is not tried again within the same look.</summary>
    public TimeSpan LongestPause { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>A server that asks for more is not obeyed further: a slip there must not silence a source for a storm.</summary>
    public Duration LongestAsked { get; init; } = Duration.FromHours(1);

    /// <summary>Bytes of a message after decompression.</summary>
    public int MostBytes { get; init; } = 4 * 1024 * 1024;

    /// <summary>Bytes of a list after decompression; the alerts of a whole country on a bad day are some 15 MB.</summary>
    public int MostListBytes { get; init; } = 32 * 1024 * 1024;

    public int MostRedirects { get; init; } = 5;

    /// <summary>Failures of a host, with hardly a success between them, after which it is left alone for a while.</summary>
    public int BreakAfter { get; init; } = 6;

    /// <summary>How long a host that keeps failing is left alone; shorter than the pace in a storm.</summary>
    public TimeSpan Break { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>Linked messages of a list that one look may fetch.</summary>
    public int MostLinks { get; init; } = 20;
}
