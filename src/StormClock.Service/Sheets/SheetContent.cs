using StormClock.Service.Pictures;
using StormClock.Service.Wording;

namespace StormClock.Service.Sheets;

/// <summary>A job's line on the sheet, in words.</summary>
/// <param name="Number">Its place in the working order, the same as in the picture.</param>
/// <param name="When">Start, last start, how long, and who.</param>
/// <param name="Details">What to bring, where it goes, what to beware of.</param>
public sealed record SheetJob(int Number, string Title, string When, IReadOnlyList<string> Details);

/// <summary>The jobs of one area, in working order.</summary>
public sealed record SheetPlace(string Name, IReadOnlyList<SheetJob> Jobs);

/// <summary>A list under a heading.</summary>
/// <param name="Ticks">Each line is short and has a box to tick.</param>
public sealed record SheetList(string Heading, IReadOnlyList<string> Lines, bool Ticks = false);

/// <summary>Everything a sheet says, in the order in which it is read; nothing is laid out yet.</summary>
/// <param name="Speech">How its reader is spoken to.</param>
/// <param name="Lead">What must be known even if nothing else is read.</param>
/// <param name="Stops">When each class of work stops, a line each.</param>
/// <param name="Why">Stage and reason, and how to read the times.</param>
/// <param name="Picture">The time line; null where there is no plan.</param>
/// <param name="Made">When, and from which forecast, the sheet was made; on every page.</param>
/// <param name="Letter">On US letter paper; else A4.</param>
public sealed record SheetContent(
    Speech Speech,
    string Title,
    IReadOnlyList<string> Lead,
    IReadOnlyList<string> Stops,
    IReadOnlyList<string> Why,
    PlanPicture? Picture,
    IReadOnlyList<SheetPlace> Places,
    IReadOnlyList<SheetList> Lists,
    string Made,
    bool Letter);
