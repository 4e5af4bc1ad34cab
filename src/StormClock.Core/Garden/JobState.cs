namespace StormClock.Core.Garden;

public enum JobProgress { Open, Started, Done, Cannot, Later }

/// <summary>Why a job cannot be done; what the plan makes of it differs.</summary>
public enum CannotWhy
{
    /// <summary>It goes behind the other work, and comes again if there is time.</summary>
    NoTime,

    /// <summary>It is left out until the material is there, which goes on the list of what to buy.</summary>
    NoMaterial,

    /// <summary>It is planned for one person more.</summary>
    NeedsPerson,
}

/// <summary>What a person last said about a job, by link, page or reply.</summary>
/// <param name="Why">With <see cref="JobProgress.Cannot"/>; null where no reason was given: the job is left out then.</param>
public sealed record JobState(string JobId, JobProgress Progress, Instant At, string By, CannotWhy? Why = null)
{
    /// <summary>What had been said before, for whoever takes this back; null when nothing had.</summary>
    public JobState? Before { get; init; }
}
