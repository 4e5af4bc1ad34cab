using StormClock.Core.Garden;
using StormClock.Service.Desk;

namespace StormClock.Service.Rehearsal;

/// <summary>Keeps what happens, writes it to a file a line each, and shows the same to the reader.</summary>
internal sealed class RehearsalLog : IDisposable
{
    public const string FileName = "log.txt";
    private readonly List<JournalEntry> entries = [];
    private readonly GardenBook garden;
    private readonly StreamWriter file;
    private readonly TextWriter output;

    public RehearsalLog(Journal journal, GardenBook garden, string folder, TextWriter output)
    {
        this.garden = garden;
        this.output = output;
        file = new(Path.Combine(folder, FileName), append: true) { AutoFlush = true };
        journal.Written += Write;
    }

    public IReadOnlyList<JournalEntry> Entries => entries;

    public void Write(JournalEntry entry)
    {
        entries.Add(entry);
        var line = Line(entry);
        file.WriteLine(line);
        output.WriteLine(line);
    }

    public void Dispose() => file.Dispose();

    private string Line(JournalEntry entry)
    {
        var at = entry.At.InZone(garden.Zone).ToString("uuuu-MM-dd ddd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
        var jobs = entry.Jobs is { Count: > 0 } list ? $" [{list.Count} {(list.Count == 1 ? "job" : "jobs")}]" : "";
        var what = entry.Kind switch
        {
            "advisory" => $"heard {entry.Subject}",
            "stage" or "recheck" or "standdown" => entry.Reason,
            "plan" => "the plan changed",
            "reminder" => $"wanted for {entry.To}: {entry.Subject}",
            "sent" => $"to {entry.To}: {entry.Subject}",
            "missed" => $"not sent in its time of use: {entry.Subject}",
            "done" => $"{entry.To} reported {string.Join(", ", entry.Jobs ?? [])}",
            _ => $"{entry.Subject}: {entry.Reason}",
        };
        return $"{at}  {entry.Kind,-9} {what}{(entry.Kind == "done" ? "" : jobs)}";
    }
}
