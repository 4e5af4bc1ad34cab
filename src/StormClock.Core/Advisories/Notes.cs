namespace StormClock.Core.Advisories;

/// <summary>Something a person entered by hand for one garden; binding for its owner and shown with name and time.</summary>
public abstract record Note(string GardenId, string By, Instant Made) : Advisory
{
    /// <summary>A note of wind, rain or water lapses after this unless it is made anew (science.md 4.1).</summary>
    public static readonly Duration UsualHolding = Duration.FromHours(12);

    /// <summary>When it stops to hold; null for the usual time of its kind.</summary>
    public Instant? Expires { get; init; }

    /// <summary>Its maker has confirmed that it takes the place of the garden's earlier notes of its kind, though it may make things later.</summary>
    public bool Replaces { get; init; }

    public override Instant Issued => Made;

    /// <summary>
    /// Whether it would make things later, lighter or lower than an earlier note does, were that taken back: what must be confirmed
    /// (science.md 4.1).
    /// </summary>
    public bool Eases(Note earlier) => (this, earlier) switch
    {
        (AllClearNote, not AllClearNote) => true,
        (WindNote now, WindNote then) => now.From > then.From || now.GustMps < then.GustMps || now.Until < (then.Until ?? Instant.MaxValue),
        (RainNote now, RainNote then) => now.From > then.From || now.DayMm < then.DayMm || (now.HourMm ?? 0) < (then.HourMm ?? 0),
        (WaterNote now, WaterNote then) => now.Datum != then.Datum || now.LevelM < then.LevelM,
        (LeaveByNote now, LeaveByNote then) => now.LeaveBy > then.LeaveBy,
        _ => false,
    };
}

/// <summary>Unsafe wind by hand: it may make the plan earlier at once, later never without a confirmed all clear.</summary>
/// <param name="From">Wind arrives no later than this.</param>
/// <param name="GustMps">Peak gust expected at the garden, m/s.</param>
/// <param name="Until">When it is expected to be over, where known.</param>
public sealed record WindNote(string GardenId, string By, Instant Made, Instant From, double GustMps, Instant? Until)
    : Note(GardenId, By, Made)
{
    public override string Id => $"note/{GardenId}/wind/{Made:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override string Title => $"wind note by {By}";
}

/// <summary>Rain by hand: counts like the careful value of a forecast.</summary>
/// <param name="From">It begins no later than this.</param>
/// <param name="DayMm">Most that may fall in 24 h, mm.</param>
/// <param name="HourMm">Most that may fall in an hour, mm; null when not said.</param>
public sealed record RainNote(string GardenId, string By, Instant Made, Instant From, double DayMm, double? HourMm)
    : Note(GardenId, By, Made)
{
    public override string Id => $"note/{GardenId}/rain/{Made:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override string Title => $"rain note by {By}";
}

/// <summary>A level that the water may reach, by hand, with what it is measured from.</summary>
public sealed record WaterNote(string GardenId, string By, Instant Made, double LevelM, string Datum)
    : Note(GardenId, By, Made)
{
    public override string Id => $"note/{GardenId}/water/{Made:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override string Title => $"water note by {By}";
}

/// <summary>Everybody leaves by this time: outranks every job.</summary>
public sealed record LeaveByNote(string GardenId, string By, Instant Made, Instant LeaveBy)
    : Note(GardenId, By, Made)
{
    public override string Id => $"note/{GardenId}/leave-by/{Made:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override string Title => $"leave-by note by {By}";
}

/// <summary>Withdraws the garden's own earlier notes. It never ends an official alert.</summary>
public sealed record AllClearNote(string GardenId, string By, Instant Made)
    : Note(GardenId, By, Made)
{
    public override string Id => $"note/{GardenId}/all-clear/{Made:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override string Title => $"all-clear note by {By}";
}
