using System.IO.Compression;
using StormClock.Service.Store;
using StormClock.Service.Web.Keeper;

namespace StormClock.Service.Commands.Restoring;

/// <summary>
/// What may be in a backup, judged by names and sizes alone before a byte of it is unpacked. An archive comes from wherever it was kept: a path that
/// leads out, a link, a file that no backup holds, or more than a box can have, and all of it is refused.
/// </summary>
internal static class ArchiveEntries
{
    public const string Data = "data/";
    public const string Config = "config/";

    /// <summary>Far above any installation: photos are bounded for each garden.</summary>
    private const int MostEntries = 50_000;

    private const long LargestDatabase = 8L << 30;
    private const long LargestKeys = 64 * 1024;

    /// <summary>Of a photo, a note, or whatever lies in a config folder.</summary>
    private const long LargestFile = 256 << 20;

    private const long LargestAll = 32L << 30;

    /// <summary>Faults named at once; whoever made a bad archive needs no longer list.</summary>
    private const int MostFaults = 10;

    private const int LongestName = 400;
    private const int UnixKind = 0xF000;
    private const int UnixFile = 0x8000;

    /// <summary>Every fault of the list of entries; empty for one that may be unpacked.</summary>
    public static IReadOnlyList<string> Faults(ZipArchive archive)
    {
        if (archive.Entries.Count > MostEntries) return [$"holds {archive.Entries.Count} files, more than any backup ({MostEntries})"];

        var faults = archive.Entries.Select(Fault).OfType<string>().ToList();
        faults.AddRange(archive.Entries.GroupBy(entry => entry.FullName, StringComparer.OrdinalIgnoreCase).Where(same => same.Count() > 1).Select(same => $"holds {Shown(same.Key)} twice"));
        if (faults.Count == 0 && archive.GetEntry(Data + StoreFile.DataName) is null) faults.Add($"holds no {Data}{StoreFile.DataName}: it is no backup made on the keeper's page");
        if (faults.Count == 0 && archive.Entries.Sum(entry => entry.Length) > LargestAll) faults.Add($"unpacks to more than {LargestAll >> 30} GB, more than any backup");
        return faults.Count > MostFaults ? [.. faults.Take(MostFaults), $"and {faults.Count - MostFaults} more like these"] : faults;
    }

    private static string? Fault(ZipArchiveEntry entry)
    {
        var name = entry.FullName;
        if (!IsPlain(name)) return $"holds {Shown(name)}, a path that no backup has";
        if ((entry.ExternalAttributes >> 16 & UnixKind) is not (0 or UnixFile)) return $"holds {Shown(name)}, which is no plain file";
        if (MostBytes(name) is not { } most) return $"holds {Shown(name)}, a file that no backup has";
        return entry.Length < 0 || entry.Length > most ? $"holds {Shown(name)} with {entry.Length} bytes, more than the {most} it may have" : null;
    }

    /// <summary>Names joined by slashes, none of which leads up or means something else to this system. What a box could back up it can also take back.</summary>
    private static bool IsPlain(string name) => name.Length <= LongestName && name.Split('/').All(part => part is not ("" or "." or "..") && !part.Any(letter => char.IsControl(letter) || letter == '\\') && (!OperatingSystem.IsWindows() || IsPlainOnWindows(part)));

    private static bool IsPlainOnWindows(string part) => part.IndexOfAny(Path.GetInvalidFileNameChars()) < 0 && part[^1] is not (' ' or '.');

    /// <summary>Null for a file that no backup holds.</summary>
    private static long? MostBytes(string name)
    {
        if (name.StartsWith(Config, StringComparison.Ordinal)) return LargestFile;
        if (!name.StartsWith(Data, StringComparison.Ordinal)) return null;
        var rest = name[Data.Length..];
        if (rest == StoreFile.DataName) return LargestDatabase;
        if (Backup.Files.Contains(rest)) return LargestKeys;
        return rest.Split('/') is [var folder, _, ..] && Backup.Folders.Contains(folder) ? LargestFile : null;
    }

    /// <summary>A name as it can be told: whatever could move a cursor or fill a screen is left out.</summary>
    public static string Shown(string name) => $"'{new string([.. name.Take(80).Select(letter => char.IsControl(letter) ? '?' : letter)])}{(name.Length > 80 ? "…" : "")}'";
}
