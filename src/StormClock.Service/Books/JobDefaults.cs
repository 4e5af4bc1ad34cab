using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>
/// What a book need not say about a job, by the kind of work and of thing. Where two classes would do, the one that
/// stops at the lower wind is taken; the gardener may write another.
/// </summary>
internal static class JobDefaults
{
    /// <summary>Worth of a line to which the gardener gave no value, in her money (C, ours): work must not count for nothing.</summary>
    public const double UnstatedValueUsd = 50;

    /// <summary>Heaviest load lifted freely by one person, kg (trade.md 4.1, C).</summary>
    public const double LiftKg = 13;

    /// <summary>
    /// take_down: hung things from a ladder, sheets as sheets, others carried. cover_off: a sheet. prune: a tree with a
    /// saw. move, raise: sheets as sheets, others carried. lay_flat: sheets as sheets, weights carried. Else ground work.
    /// </summary>
    public static WorkClass ClassOf(JobKind kind, ItemTraits traits) => kind switch
    {
        JobKind.TakeDown when traits.HasFlag(ItemTraits.Hung) => WorkClass.Ladder,
        JobKind.CoverOff => WorkClass.Sheet,
        JobKind.TakeDown or JobKind.Move or JobKind.Raise or JobKind.LayFlat when traits.HasFlag(ItemTraits.Sheet) => WorkClass.Sheet,
        JobKind.TakeDown or JobKind.Move or JobKind.Raise => WorkClass.Carry,
        JobKind.LayFlat when traits.HasFlag(ItemTraits.Heavy) => WorkClass.Carry,
        JobKind.Prune when traits.HasFlag(ItemTraits.Tree) => WorkClass.Saw,
        _ => WorkClass.Ground,
    };

    /// <summary>pick, prune, fill, drain and soak leave nothing to undo.</summary>
    public static JobKind? UndoOf(JobKind kind) => kind switch
    {
        JobKind.Tie or JobKind.Bundle or JobKind.Strap => JobKind.Untie,
        JobKind.Move or JobKind.TakeDown or JobKind.Raise or JobKind.CoverOff => JobKind.PutBack,
        JobKind.LayFlat => JobKind.ReSet,
        JobKind.WeighDown => JobKind.Clear,
        JobKind.SwitchOff => JobKind.Check,
        _ => null,
    };

    /// <summary>
    /// Soaking, switching off, the gathering of loose things, the strapping of lids, and the handling of glass, brittle
    /// hanging things and animals wait for the last hours. Cutting never does: growth is cut while it can still be carted off.
    /// </summary>
    public static bool LastRoundOf(JobKind kind, ItemTraits traits) => kind switch
    {
        JobKind.Soak or JobKind.SwitchOff => true,
        JobKind.Pick or JobKind.Prune => false,
        JobKind.Move or JobKind.TakeDown when traits.HasFlag(ItemTraits.Loose) => true,
        JobKind.Strap when traits.HasFlag(ItemTraits.Lid) => true,
        _ => (traits & (ItemTraits.Glass | ItemTraits.Animal)) != 0,
    };
}
