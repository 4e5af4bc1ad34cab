namespace StormClock.Service.Feeds;

/// <summary>How long to leave a source alone between two looks.</summary>
/// <param name="Calm">While nothing is due in any garden.</param>
/// <param name="Storm">While a stage above Nothing due holds in any garden.</param>
public sealed record FeedPace(Duration Calm, Duration Storm)
{
    /// <summary>A source is not called deaf sooner, however often it is looked at (convention).</summary>
    private static readonly Duration LeastDeaf = Duration.FromHours(1);

    /// <summary>At every turn, as befits a folder of this box.</summary>
    public static FeedPace Always { get; } = new(Duration.Zero, Duration.Zero);

    public static FeedPace Usual { get; } = new(Duration.FromMinutes(30), Duration.FromMinutes(10));

    /// <summary>In a storm a source that has brought no good answer for longer is told as deaf: two looks or an hour (convention).</summary>
    public Duration DeafAfter => Duration.Max(2 * Storm, LeastDeaf);

    public Duration Between(bool storm) => storm ? Storm : Calm;
}
