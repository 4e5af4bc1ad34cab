namespace StormClock.Core.Garden;

public enum JobProgress { Open, Started, Done, Cannot, Later }

/// <summary>What a person last said about a job, by link, page or reply.</summary>
public sealed record JobState(string JobId, JobProgress Progress, Instant At, string By, string? Why = null);
