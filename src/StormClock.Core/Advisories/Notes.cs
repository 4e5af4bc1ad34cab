namespace StormClock.Core.Advisories;

/// <summary>Something a person entered by hand for one garden; binding for its owner and shown with name and time.</summary>
public abstract record Note(string GardenId, string By, Instant Made) : Advisory
{
    public override Instant Issued => Made;
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
