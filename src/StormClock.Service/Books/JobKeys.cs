using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>Keys of a job that may be left out because something is usual, each with the part of the job it stands for.</summary>
internal static class JobKeys
{
    public static IReadOnlyList<(string Key, JobParts Part)> All { get; } =
    [
        ("minutes", JobParts.Minutes), ("people", JobParts.People), ("class", JobParts.Class), ("materials", JobParts.Materials),
        ("caution", JobParts.Caution), ("undo", JobParts.Undo), ("last_round", JobParts.LastRound), ("part_kg", JobParts.PartKg),
    ];

    /// <summary>Of a job that is named by its kind alone.</summary>
    public static JobParts Every { get; } = All.Aggregate(JobParts.None, (parts, part) => parts | part.Part);
}
