using StormClock.Core.Garden;
using StormClock.Core.Loads;
using StormClock.Core.Worth;

namespace StormClock.Core.Recheck;

/// <summary>How the wind that a thing is believed to stand has moved with the storms it met. Gusts at 10 m in the open, as forecasts tell them.</summary>
/// <param name="Before">By its figures alone.</param>
/// <param name="Now">With what was seen since.</param>
public sealed record LimitMove(Item Item, double BeforeGust10MMps, StrengthBelief Now)
{
    /// <summary>Storms in which it stood as it is written, nothing done to it.</summary>
    public int Storms => Now.Outcomes;
}

/// <summary>
/// Beliefs of what things stand, from outcomes (science.md 5.5). Only of things to which nothing was done that steadies them: tied and
/// untied are two. The gust is the forecast's, not measured, so that one storm moves a figure little.
/// </summary>
public static class LimitHistory
{
    /// <summary>What leaves a thing standing as it was.</summary>
    private static readonly HashSet<JobKind> LeavesItAsItIs = [JobKind.Pick, JobKind.SwitchOff, JobKind.Soak, JobKind.Check];

    /// <summary>Of the things that have met a storm as they stand, in the order of the book.</summary>
    /// <param name="outcomes">Of all storms.</param>
    public static IReadOnlyList<LimitMove> Of(GardenBook book, IReadOnlyList<Outcome> outcomes)
    {
        var seen = outcomes.ToLookup(outcome => outcome.ItemId);
        return [.. book.Items.Select(item => Of(book, item, [.. seen[item.Id]])).OfType<LimitMove>()];
    }

    private static LimitMove? Of(GardenBook book, Item item, IReadOnlyList<Outcome> outcomes)
    {
        var area = book.AreaOf(item);
        if (ItemChance.Weakest(item.Shape, item.Build) is not { } strength) return null;
        List<StormOutcome> met = [.. from outcome in outcomes
                                     where outcome.Gust10MMps > 0 && outcome.Done.All(LeavesItAsItIs.Contains) && Held(outcome.Kind) is not null
                                     select new StormOutcome(outcome.Gust10MMps!.Value, Held(outcome.Kind)!.Value, Measured: false)];
        if (met.Count == 0) return null;

        var before = strength.First.GustMps / ItemChance.ShareOfGust(strength, book.SiteOf(area).Terrain, area.Exposure);
        return new(item, before, StrengthBelief.Before(before).After(met));
    }

    /// <summary>Null where an outcome tells nothing of how much wind it stood.</summary>
    private static bool? Held(OutcomeKind kind) => kind switch
    {
        OutcomeKind.Held => true,
        OutcomeKind.Moved or OutcomeKind.Leaning or OutcomeKind.Damaged or OutcomeKind.Lost => false,
        _ => null,
    };
}
