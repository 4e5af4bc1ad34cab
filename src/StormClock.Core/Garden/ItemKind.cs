namespace StormClock.Core.Garden;

/// <summary>What about a kind of thing decides how it is worked on.</summary>
[Flags]
public enum ItemTraits
{
    None = 0,

    /// <summary>Hangs or stands above reach: taken down from a ladder.</summary>
    Hung = 1,

    /// <summary>Catches wind as a sheet does: stops at the sheet limit (trade.md 1.1, C).</summary>
    Sheet = 2,

    /// <summary>Breaks, and is wanted in place until the last hours.</summary>
    Glass = 4,

    /// <summary>Alive; moved last.</summary>
    Animal = 8,

    /// <summary>Woody and high enough to be cut with a saw.</summary>
    Tree = 16,

    /// <summary>A weight to be handled, not a plant to be tied.</summary>
    Heavy = 32,

    /// <summary>Must not get into water: chemicals, fuel, feed.</summary>
    Harmful = 64,

    /// <summary>Light and lying about in daily use: gathered on the last round.</summary>
    Loose = 128,

    /// <summary>Has a lid that is in daily use: strapped on the last round.</summary>
    Lid = 256,
}

/// <summary>A kind of thing in the trade's words, with what is typical of it.</summary>
/// <param name="Token">As books write it, e.g. <c>potted_tree</c>.</param>
/// <param name="Words">As people say it, in the singular: "potted tree".</param>
/// <param name="ValueEachUsd">Typical worth of one piece.</param>
/// <param name="Typical">Typical build of one piece.</param>
/// <param name="Jobs">What is usually done with it, in order.</param>
public sealed record ItemKind(
    string Token, string Words, ItemTraits Traits, ItemShape Shape, double ValueEachUsd, ItemBuild Typical, IReadOnlyList<KindJob> Jobs)
{
    /// <summary>What to say of the thing itself, whatever is done with it; null when nothing.</summary>
    public string? Caution { get; init; }
}

/// <summary>A job that comes with a kind.</summary>
/// <param name="MinutesFirst">For the first piece, by <paramref name="People"/> people.</param>
/// <param name="MinutesEach">For every further piece.</param>
/// <param name="Class">Null: by the kind of job and the traits.</param>
/// <param name="Materials">For one piece.</param>
/// <param name="After">Jobs of the same item that come before it.</param>
/// <param name="Caution">What to beware of; null when the usual cautions suffice.</param>
/// <param name="Fallback">The cheap thing to do when it does not fit; null when there is none.</param>
public sealed record KindJob(
    JobKind Kind,
    double MinutesFirst,
    double MinutesEach,
    int People,
    WorkClass? Class,
    IReadOnlyList<MaterialNeed> Materials,
    IReadOnlyList<JobKind> After,
    string? Caution,
    string? Fallback)
{
    /// <inheritdoc cref="Job.PartKg"/>
    public double? PartKg { get; init; }

    /// <summary>Whole minutes for so many pieces, at least one; a whole sum is not pushed up by the last bit of a fraction.</summary>
    public int Minutes(int count) => (int)Math.Max(1, Math.Ceiling(Math.Round(MinutesFirst + MinutesEach * (count - 1), 6)));
}
