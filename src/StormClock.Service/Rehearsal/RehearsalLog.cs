using System.Globalization;
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

    private string Line(JournalEntry entry) =>
        $"{entry.At.InZone(garden.Zone).ToString("uuuu-MM-dd ddd HH:mm", CultureInfo.InvariantCulture)}  {JournalLine.Of(entry)}";
}
