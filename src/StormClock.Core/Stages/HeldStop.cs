using StormClock.Core.Units;

namespace StormClock.Core.Stages;

/// <summary>
/// The stop time that people have been told. It moves earlier at once; later only by three hours or more, and only when a
/// second full advisory confirms it (science.md 4.3): forecasts wander, and a stop that wandered back would come too late.
/// </summary>
/// <param name="At">When the garden closes, a quarter of an hour as people read it; null while nothing would close it.</param>
/// <param name="LaterSeenIn">Id of the advisory that first said so much later; null when none has.</param>
public sealed record HeldStop(Instant? At, string? LaterSeenIn)
{
    private static readonly Duration WorthMovingBack = Duration.FromHours(3);

    /// <summary>A stop that passed so long ago without closing the garden was too unlikely to: it binds nobody any more.</summary>
    private static readonly Duration Lapses = Duration.FromHours(6);

    public static HeldStop None { get; } = new(null, null);

    /// <param name="told">Earliest reasonable stop of ground work by the newest sources; null when it (almost) never comes.</param>
    /// <param name="advisory">Id of the newest full advisory.</param>
    /// <param name="lastWord">No second advisory will follow.</param>
    public HeldStop Next(Instant? told, string? advisory, bool lastWord, Instant now)
    {
        if (told is { } exact) told = Moments.QuarterBefore(exact);
        if (At is not { } held || told <= held || now - held > Lapses) return new(told, null);
        if (told is { } later && later - held < WorthMovingBack) return this with { LaterSeenIn = null };
        var confirmed = lastWord || (LaterSeenIn is { } first && first != advisory && advisory is not null);
        return confirmed ? new(told, null) : this with { LaterSeenIn = LaterSeenIn ?? advisory };
    }
}
