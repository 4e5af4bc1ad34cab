using System.Globalization;
using System.Text;

namespace StormClock.Service.Desk;

/// <summary>What happened, one text file a day (UTC) in the data folder, so that the keeper's page can show the last days. Lines of people, not the truth: that is in the store.</summary>
public sealed class DayLog
{
    /// <summary>Days kept (C): a storm with its first rechecks.</summary>
    public const int Days = 14;

    private readonly string folder;
    private readonly Lock turn = new();

    public DayLog(string folder, Journal journal)
    {
        this.folder = folder;
        journal.Written += Write;
    }

    /// <summary>The newest lines first, each with its time; at most so many.</summary>
    public IReadOnlyList<string> Newest(int most)
    {
        lock (turn)
        {
            List<string> lines = [];
            foreach (var file in Files().Reverse())
            {
                lines.AddRange(File.ReadLines(file).Reverse().Take(most - lines.Count));
                if (lines.Count >= most) break;
            }

            return lines;
        }
    }

    /// <summary>A full disk must not stop what is told to people for the sake of its log.</summary>
    private void Write(JournalEntry entry)
    {
        lock (turn)
        {
            try
            {
                Directory.CreateDirectory(folder);
                var file = Path.Combine(folder, $"{entry.At.InUtc().Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}.log");
                if (!File.Exists(file)) DropOld();
                var garden = entry.Garden is { } id ? id + ": " : "";
                File.AppendAllText(file, $"{entry.At.ToString("uuuu-MM-dd HH:mm:ss", CultureInfo.InvariantCulture)} UTC {garden}{JournalLine.Of(entry).ReplaceLineEndings(" ")}\n", Encoding.UTF8);
            }
            catch (IOException)
            {
            }
        }
    }

    private void DropOld()
    {
        foreach (var file in Files().SkipLast(Days - 1)) File.Delete(file);
    }

    private IEnumerable<string> Files() => Directory.Exists(folder) ? Directory.EnumerateFiles(folder, "????-??-??.log").Order(StringComparer.Ordinal) : [];
}
