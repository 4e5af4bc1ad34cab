namespace StormClock.Service.Desk;

/// <summary>A journal entry as one line for people.</summary>
internal static class JournalLine
{
    public static string Of(JournalEntry entry)
    {
        var what = entry.Kind switch
        {
            "advisory" => $"heard {entry.Subject}",
            "stage" or "recheck" or "standdown" => entry.Reason,
            "plan" => "the plan changed",
            "reminder" => $"wanted for {entry.To}: {entry.Subject}",
            "sent" => $"to {entry.To}: {entry.Subject}",
            "missed" => $"not sent in its time of use: {entry.Subject}",
            "done" when entry.Reason == JournalEntry.In => $"{entry.To} is in",
            "done" => $"{entry.To} answered {entry.Reason} for {string.Join(", ", entry.Jobs ?? [])}",
            "reply" => $"{entry.Subject}{(entry.To is { } person ? $" of {person}" : "")}: {entry.Reason}",
            _ => $"{entry.Subject}: {entry.Reason}",
        };
        var jobs = entry.Kind != "done" && entry.Jobs is { Count: > 0 } list ? $" [{list.Count} {(list.Count == 1 ? "job" : "jobs")}]" : "";
        // Plain spaces, so that the log can be searched as it is read.
        return $"{entry.Kind,-9} {what}{jobs}".Replace('\u00a0', ' ');
    }
}
