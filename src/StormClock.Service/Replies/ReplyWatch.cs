using StormClock.Service.Messages;

namespace StormClock.Service.Replies;

/// <summary>How the mailbox for answers is doing. Knows nothing where none is set up.</summary>
internal sealed class ReplyWatch
{
    /// <summary>A single look that fails is the network's daily life; people wait this long for the plan to follow them.</summary>
    private static readonly Duration DeafAfter = Duration.FromMinutes(20);

    private readonly Lock gate = new();
    private ReplyHealth? health;

    /// <summary>Null before the first look.</summary>
    public ReplyHealth? Health
    {
        get
        {
            lock (gate) return health;
        }
    }

    /// <summary>True when it had failed before.</summary>
    public bool Good(Instant now)
    {
        lock (gate)
        {
            var mended = health is { Failures: > 0 };
            health = new(now, now, null, null, 0);
            return mended;
        }
    }

    /// <summary>True when this is news: the first failure, or another one than before.</summary>
    public bool Failed(Instant now, string error)
    {
        lock (gate)
        {
            var news = health?.LastError != error;
            health = new(health?.FirstLook ?? now, health?.LastGood, error, now, (health?.Failures ?? 0) + 1);
            return news;
        }
    }

    public static bool IsDeaf(ReplyHealth health, Instant now) => health.Failures > 1 && now - (health.LastGood ?? health.FirstLook) > DeafAfter;

    /// <summary>A sentence for the front page; null while all is well.</summary>
    public string? Trouble(Instant now) => Health is { } known && IsDeaf(known, now)
        ? $"Answers by mail have not been read since {known.LastGood ?? known.FirstLook:uuuu-MM-dd HH:mm} UTC: {Plain.Cut(known.LastError ?? "", 200)}. They wait in the mailbox."
        : null;
}

/// <param name="LastGood">When the mailbox was last read; null when it never was.</param>
/// <param name="Failures">Looks in a row that failed.</param>
public sealed record ReplyHealth(Instant FirstLook, Instant? LastGood, string? LastError, Instant? LastErrorAt, int Failures);
