namespace StormClock.Core.Garden;

/// <summary>Why a job is left out, or is better left.</summary>
public enum LeftCause
{
    /// <summary>No time left before this class of work must stop.</summary>
    NoTime,

    /// <summary>The same, but there is time for some of the pieces.</summary>
    NoTimeForAll,

    /// <summary>This class of work must already have stopped.</summary>
    Stopped,

    /// <summary>Nobody in the book works.</summary>
    Nobody,

    /// <summary>More people at once than there are.</summary>
    TooFewPeople,

    /// <summary>Nobody in the book can lift it, alone or together.</summary>
    TooHeavy,

    /// <summary>More people at once than go up a ladder.</summary>
    TooFewClimb,

    /// <summary>Work on a ladder for one, and nobody goes up one alone.</summary>
    NobodyClimbsAlone,

    /// <summary>No stretch of light within own hours is long enough.</summary>
    NoWindow,

    /// <summary>Rain or thunder is forecast for every stretch that is long enough.</summary>
    Weather,

    StoreFull,

    /// <summary>One piece is wider than the door of the store.</summary>
    DoorTooNarrow,

    /// <summary>What must come before it is left out.</summary>
    FollowsLeftOut,

    /// <summary>It waits for itself.</summary>
    Circle,

    /// <summary>Somebody said that the material is missing.</summary>
    SaidNoMaterial,

    /// <summary>Somebody said that it cannot be done.</summary>
    SaidCannot,

    /// <summary>Nothing of it is ripe, and it does not ripen off the plant.</summary>
    NotRipe,

    /// <summary>It would stand less wind afterwards.</summary>
    WouldStandLess,

    /// <summary>What is done before takes it out of the wind.</summary>
    OutOfWind,

    /// <summary>By its figures it takes more wind than this forecast brings.</summary>
    StandsThisWind,

    /// <summary>By its figures it goes at nearly the same wind with this done.</summary>
    NoDifference,
}

/// <summary>The cause with what belongs to it; the service has the words.</summary>
public sealed record LeftReason(LeftCause Cause)
{
    /// <summary>Needed at once, where there are too few.</summary>
    public int People { get; init; }

    /// <summary>Of what is too heavy.</summary>
    public double MassKg { get; init; }

    /// <summary>For which there is time, of <see cref="AllPieces"/>.</summary>
    public int Pieces { get; init; }

    public int AllPieces { get; init; }

    /// <summary>Job ids from the job back to itself.</summary>
    public IReadOnlyList<string> Circle { get; init; } = [];

    /// <summary>Before its class of work stops there is no open window at all, not even a short one.</summary>
    public bool NeverOpen { get; init; }

    /// <summary>Who said so.</summary>
    public string By { get; init; } = "";

    /// <summary>What is not ripe, as the catalogue calls it.</summary>
    public string Crop { get; init; } = "";

    public static implicit operator LeftReason(LeftCause cause) => new(cause);
}
