using StormClock.Core.Garden;

namespace StormClock.Service.Commands;

/// <summary>The file of <c>plan --done</c>: job id, state and time, a line each.</summary>
internal static class DoneFile
{
    public static Dictionary<string, JobState> Read(Inputs inputs, string? file, GardenBook book, Instant? now)
    {
        var states = new Dictionary<string, JobState>();
        if (file is null || inputs.Text(file) is not { } text) return states;
        var ids = book.Jobs.Select(job => job.Id).ToHashSet();
        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var cells = lines[i].Split([',', ' ', '\t', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (cells.Length == 0 || cells[0][0] == '#') continue;
            if (cells.Length != 3) inputs.Fault($"{file}:{i + 1}: a line is job id, state and time");
            else if (!ids.Contains(cells[0])) inputs.Fault($"{file}:{i + 1}: the garden has no job '{cells[0]}'");
            else if (!Enum.TryParse<JobProgress>(cells[1], ignoreCase: true, out var progress) || !char.IsAsciiLetter(cells[1][0])) inputs.Fault($"{file}:{i + 1}: '{cells[1]}' is not one of open, started, done, cannot, later");
            else if (inputs.Time(cells[2], $"{file}:{i + 1}") is { } at && !(at > now)) states[cells[0]] = new(cells[0], progress, at, "done file");
        }

        return states;
    }
}
