namespace StormClock.Service.Feeds.Health;

/// <summary>A spell in which a source could not be heard, now over.</summary>
public sealed record DeafSpell(Instant Since, Instant Again);

/// <summary>How one source has been doing. A value: each look gives the next.</summary>
/// <param name="FirstAsked">When it was first looked at.</param>
public sealed record FeedHealth(string Name, Instant FirstAsked)
{
    /// <summary>Last answer that could be used; null before the first.</summary>
    public Instant? LastGood { get; init; }

    /// <summary>When what it shows was last found to differ.</summary>
    public Instant? LastChange { get; init; }

    /// <summary>Issue time of the newest message it brought.</summary>
    public Instant? NewestIssued { get; init; }

    public string? ContentMark { get; init; }

    public string? LastError { get; init; }

    public Instant? LastErrorAt { get; init; }

    /// <summary>Looks in a row that brought nothing usable.</summary>
    public int Failures { get; init; }

    /// <summary>The last spell without a good answer, once over.</summary>
    public DeafSpell? LastSpell { get; init; }

    /// <summary>When the spell of silence that lasts began: the last good answer, or the first look of all.</summary>
    public Instant Since => LastGood ?? FirstAsked;

    /// <summary>When the content was made: by its own word where it has one, else by when it changed here.</summary>
    public Instant? ContentFrom => NewestIssued ?? LastChange;

    /// <summary>One failed look, or the pause between two, makes nobody deaf: two in a row have failed, and the limit has passed.</summary>
    public bool IsDeaf(Instant now, Duration limit) => Failures >= 2 && now - Since > limit;

    /// <summary>It answers, but with old content.</summary>
    public bool IsStale(Instant now, Duration? limit) => Failures == 0 && limit is { } most && now - ContentFrom > most;

    /// <summary>After a look that brought something usable, or the word that nothing has changed.</summary>
    /// <param name="changed">What it shows differs from the last time.</param>
    /// <param name="mark">The new content's mark; null where there is none.</param>
    /// <param name="issued">Issue time of the newest message that came; null when none came.</param>
    /// <param name="trouble">Why a part is missing; null when nothing is.</param>
    public FeedHealth Heard(Instant now, bool changed, string? mark, Instant? issued, string? trouble) => this with
    {
        LastGood = now,
        LastChange = changed ? now : LastChange,
        ContentMark = mark ?? ContentMark,
        NewestIssued = NewestIssued is { } known && !(issued > known) ? known : issued,
        LastError = trouble ?? LastError,
        LastErrorAt = trouble is null ? LastErrorAt : now,
        Failures = 0,
        LastSpell = Failures > 0 ? new(Since, now) : LastSpell,
    };

    public FeedHealth Failed(Instant now, string trouble) => this with { LastError = trouble, LastErrorAt = now, Failures = Failures + 1 };
}
