namespace StormClock.Core.Garden;

/// <param name="Kind">Item kind in the trade's words, e.g. <c>potted_tree</c>.</param>
/// <param name="ValueUsd">What the whole line is worth to the gardener, in her money.</param>
/// <param name="Endangers">Who or what it can hurt, e.g. <c>neighbour_window</c>; empty when nothing.</param>
public sealed record Item(
    string Id,
    string Name,
    string Kind,
    string AreaId,
    int Count,
    double ValueUsd,
    IReadOnlyList<string> Endangers,
    IReadOnlyList<Job> Jobs)
{
    /// <summary>What sort of thing the wind meets.</summary>
    public ItemShape Shape { get; init; }

    /// <summary>How one piece is made and stands, as the gardener wrote it.</summary>
    public ItemBuild Written { get; init; } = ItemBuild.Unknown;

    /// <summary>The same with the kind's typical figures where she wrote nothing.</summary>
    public ItemBuild Build { get; init; } = ItemBuild.Unknown;

    /// <summary>What its kind says to beware of, whatever is done with it; null when nothing.</summary>
    public string? Caution { get; init; }

    /// <summary>What can be picked from the line; null when nothing.</summary>
    public Harvest? Harvest { get; init; }

    /// <summary>Where it stands on the gardener's own drawing; null when she has not placed it.</summary>
    public PlotSpot? Spot { get; init; }

    /// <summary>The gardener gave no value: it is the kind's typical one.</summary>
    public bool ValueTypical { get; init; }

    /// <summary>The gardener wrote no jobs at all: they are the kind's usual ones.</summary>
    public bool JobsTypical { get; init; }

    /// <summary>One piece as it stands, kg; 0 when not known.</summary>
    public double MassKg => Build.MassKg ?? 0;
}

/// <summary>One thing to be done to an item before the storm.</summary>
/// <param name="Id">Unique in the garden: <c>item-id/kind</c>.</param>
/// <param name="Minutes">For the whole line by the people it needs, by the book.</param>
/// <param name="People">How many people it takes at once, 1 or 2.</param>
/// <param name="After">Ids of jobs that must be done before it starts.</param>
/// <param name="Value">Worth of having it done, in the garden's money; until losses are computed, the item's value.</param>
/// <param name="HazardToOthers">Extra worth because it can hit people or reach water.</param>
/// <param name="Fallback">The cheap thing to do when it does not fit, in the gardener's words.</param>
/// <param name="Undo">What must be undone afterwards; null when nothing.</param>
/// <param name="LastRound">Kept for the last hours: glass, loose things, lids, animals, soaking.</param>
public sealed record Job(
    string Id,
    string ItemId,
    JobKind Kind,
    int Minutes,
    int People,
    WorkClass Class,
    IReadOnlyList<string> After,
    double Value,
    double HazardToOthers,
    IReadOnlyList<MaterialNeed> Materials,
    string? StoreId,
    double StoreFloorM2,
    double StoreVolumeM3,
    string? Fallback,
    JobKind? Undo,
    bool LastRound)
{
    /// <summary>Somebody lifts the thing in this work.</summary>
    public bool Lifts => Kind is JobKind.Move or JobKind.Raise or JobKind.TakeDown;

    /// <summary>The heaviest part that is lifted where the thing comes apart for it, kg; null where it is lifted whole, or nothing is.</summary>
    public double? PartKg { get; init; }

    /// <summary>What is lifted at a time, kg: the heaviest part, else one piece of the thing; null where nothing is lifted or its mass is not known.</summary>
    public double? LiftedKg(Item item) => Lifts ? PartKg ?? item.Build.MassKg : null;

    /// <summary>What to beware of in this work, a sentence; null when the usual cautions suffice.</summary>
    public string? Caution { get; init; }

    /// <summary>The gardener wrote nothing of it: the job comes with the kind.</summary>
    public bool Typical { get; init; }

    /// <summary>What she left out of a job that she wrote herself.</summary>
    public JobParts LeftOut { get; init; }

    /// <summary>The gardener gave the job a value of its own, which stands whatever the losses.</summary>
    public bool ValueStated { get; init; }
}

/// <summary>Parts of a job that need not be written.</summary>
[Flags]
public enum JobParts
{
    None = 0,
    Minutes = 1,
    People = 2,
    Class = 4,
    Materials = 8,
    Caution = 16,
    Undo = 32,
    LastRound = 64,
    PartKg = 128,
}

public sealed record MaterialNeed(string Material, double Quantity, string Unit);
