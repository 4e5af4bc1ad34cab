namespace StormClock.Core.Reminders;

/// <summary>A spell in which one source could not be heard, longer than its pace allows.</summary>
/// <param name="Source">Name of the source in the settings.</param>
/// <param name="Since">When it was last heard, or first asked where it never was heard.</param>
/// <param name="Again">When it was heard again; null while it is still deaf.</param>
public sealed record SourceSilence(string Source, Instant Since, Instant? Again);
