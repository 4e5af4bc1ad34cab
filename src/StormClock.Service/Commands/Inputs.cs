using NodaTime.Text;
using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;
using StormClock.Core.Formats.Notes;
using StormClock.Core.Garden;
using StormClock.Core.Units;
using StormClock.Core.Water;
using StormClock.Service.Books;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Recording;

namespace StormClock.Service.Commands;

/// <summary>
/// Reads what a command was given. Every fault becomes one line on stderr with file and place; a value comes back only when
/// there was none.
/// </summary>
internal sealed class Inputs
{
    /// <summary>Beyond these a time is a slip of the pen, and the calendar's own ends are far enough away to reckon with.</summary>
    private const int FirstYear = 1900;

    private const int LastYear = 2200;

    private readonly List<string> faults = [];

    /// <summary>Prints the faults found; true when there were any.</summary>
    public bool Report()
    {
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        return faults.Count > 0;
    }

    public Instant? Time(string? text, string option)
    {
        if (text is null) return null;
        foreach (var pattern in Patterns)
        {
            if (pattern.Parse(text) is { Success: true } read && read.Value.Year is >= FirstYear and <= LastYear) return read.Value.ToInstant();
        }

        faults.Add($"{option}: '{text}' is not a time like 2027-09-12T10:00Z or 2027-09-12T06:00-04:00, of the years {FirstYear} to {LastYear}");
        return null;
    }

    public GeoPoint? Place(string? text, string option)
    {
        if (text is null) return null;
        var parts = text.Split(',');
        if (parts.Length == 2 && Degrees(parts[0], 90) is { } lat && Degrees(parts[1], 180) is { } lon) return new(lat, lon);
        faults.Add($"{option}: '{text}' is not LAT,LON in degrees, such as 26.64,-81.87");
        return null;
    }

    public double? Gust(string text, string option)
    {
        var read = Quantity.Parse(text, QuantityKind.WindSpeed, "gust", out _);
        if (read is > 0 and < NoteReader.MostGustMps) return read;
        faults.Add(read is null
            ? $"{option}: '{text}' is not a wind speed with its unit, such as \"60 mph\", \"25 m/s\", \"90 km/h\" or \"50 kt\""
            : $"{option}: '{text}' is no gust; it must be over 0 and under {NoteReader.MostGustMps} m/s");
        return null;
    }

    /// <summary>A depth of rain with its unit, e.g. <c>120 mm</c> or <c>5 in</c>, mm.</summary>
    public double? Rain(string? text, string option)
    {
        if (text is null) return null;
        var factor = Quantity.Split(text) switch { { Unit: "mm" } => 1, { Unit: "in" } => 25.4, { Unit: "cm" } => 10, _ => 0.0 };
        if (factor > 0 && Quantity.Split(text)!.Value.Number * factor is >= 0 and <= NoteReader.MostDayMm and var mm) return mm;
        faults.Add($"{option}: '{text}' is not a depth of rain with its unit, such as \"120 mm\" or \"5 in\", up to {NoteReader.MostDayMm} mm");
        return null;
    }

    /// <summary>A level with its unit and datum, e.g. <c>1.8 m NAVD88</c>; null when none is given or the fault is told.</summary>
    public WaterLevel? Water(string? text, string option)
    {
        if (text is null) return null;
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var factor = words.Length == 3 ? words[1] switch { "m" => 1.0, "ft" => 0.3048, _ => 0 } : 0;
        if (factor > 0 && Quantity.Number(words[0]) is { } number && Math.Abs(number * factor) <= NoteReader.MostWaterM) return new(number * factor, words[2]);
        faults.Add($"{option}: '{text}' is not a level with its unit and datum, such as \"1.8 m NAVD88\" or \"6 ft MHHW\"; without the datum it could not be compared with anything");
        return null;
    }

    public GardenBook? Garden(string file)
    {
        var read = GardenFiles.Read(file);
        Add(file, read.Faults);
        return read.Value;
    }

    /// <summary>
    /// Every message in a file or folder with the time at which it is heard: as recorded, where <c>serve --record</c> has
    /// filled the folder, else when it was issued.
    /// </summary>
    public IReadOnlyList<HeardMessage> Heard(string path)
    {
        if (!RecordedFolder.Is(path)) return [.. Advisories(path).Select(entry => new HeardMessage(entry.Advisory, entry.Raw, entry.Advisory.Issued))];
        var (heard, found) = RecordedFolder.Read(path, FeedIndexReader.Read);
        Add(path, found);
        if (heard.Count == 0 && found.Count == 0) faults.Add($"{path}: no recorded answer in this folder holds a message");
        return heard;
    }

    /// <summary>Every advisory in a file or folder, oldest first.</summary>
    public IReadOnlyList<(Advisory Advisory, RawMessage Raw)> Advisories(string path)
    {
        if (RecordedFolder.Is(path)) return [.. Heard(path).Select(message => (message.Advisory, message.Raw)).OrderBy(entry => entry.Advisory.Issued).ThenBy(entry => entry.Advisory.Id, StringComparer.Ordinal)];
        var files = Files(path);
        var read = new List<(Advisory, RawMessage)>();
        foreach (var file in files)
        {
            var raw = Raw(file);
            if (raw is null) continue;
            var result = MessageReader.ReadAll(raw.Bytes);
            Add(file.FullName, result.Faults);
            read.AddRange((result.Value ?? []).Select(advisory => (advisory, raw)));
            foreach (var mend in (result.Value ?? []).OfType<CycloneAdvisory>().SelectMany(advisory => advisory.Mends)) Console.Error.WriteLine($"{file.FullName}: used after mending: {mend}");
        }

        return [.. read.OrderBy(entry => entry.Item1.Issued).ThenBy(entry => entry.Item1.Id, StringComparer.Ordinal)];
    }

    /// <summary>A whole text file of a bearable size.</summary>
    public string? Text(string file)
    {
        var read = TextFile.Read(file);
        Add(file, read.Faults);
        return read.Value;
    }

    /// <summary>A folder that is written to: it may be missing, but must be no file.</summary>
    public void WritableFolder(string? path, string option)
    {
        if (File.Exists(path)) faults.Add($"{option}: {path} is a file; name a folder");
    }

    /// <summary>A folder that was named and is read from.</summary>
    public void GivenFolder(string? path, string option)
    {
        if (path is not null && !Directory.Exists(path)) faults.Add($"{option}: there is no folder {path}");
    }

    /// <summary>Something was refused already.</summary>
    public bool HasFault => faults.Count > 0;

    public void Fault(string text) => faults.Add(text);

    private List<FileInfo> Files(string path)
    {
        if (File.Exists(path)) return [new(path)];
        if (!Directory.Exists(path))
        {
            faults.Add($"{path}: there is no such file or folder");
            return [];
        }

        var files = MessageFiles.In(path).ToList();
        if (files.Count == 0) faults.Add($"{path}: the folder holds no messages (.txt, .xml or .cap files)");
        return files;
    }

    private RawMessage? Raw(FileInfo file)
    {
        try
        {
            return new(file.Name, MessageFiles.ReadAsync(file, CancellationToken.None).GetAwaiter().GetResult());
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            faults.Add($"{file.FullName}: cannot be read: {trouble.Message}");
            return null;
        }
    }

    public void Add(string file, IReadOnlyList<ReadFault> found)
    {
        foreach (var fault in found) faults.Add(fault.ToldOf(file));
    }

    private static double? Degrees(string text, double limit) =>
        double.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var value) && Math.Abs(value) <= limit
            ? value
            : null;

    private static readonly OffsetDateTimePattern[] Patterns =
    [
        OffsetDateTimePattern.ExtendedIso,
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mmo<Z+HH:mm>"),
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HHo<Z+HH:mm>"),
    ];
}
