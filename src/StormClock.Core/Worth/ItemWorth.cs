using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Worth;

/// <summary>
/// The worth of an item's jobs: expected loss without the job less that with it, over the peak gusts of the members (science.md 5.5). The jobs are
/// taken in the order of the book, each with those before it done, but for those that are known to stay undone.
/// </summary>
public static class ItemWorth
{
    // A thing that is thrown at others weighs three times itself (science.md 8.1, C).
    private const double HazardFactor = 3;

    // A thing worth little can still break a window: it weighs at least this much (C).
    private const double LeastHazardUsd = 50;

    /// <summary>Work that makes less difference than this is left (C).</summary>
    public const double LeastDifference = 0.02;

    /// <summary>Share of the value at stake in work against water while no level is known (C).</summary>
    private const double WaterShare = 0.25;

    /// <summary>Share of the value at stake in work that no figure stands behind: switching off, checking (C).</summary>
    private const double OtherShare = 0.10;

    // Height of a plant of which none is written, and of its fruit as a share of it (C).
    private const double UnknownPlantM = 2;
    private const double FruitAtShareOfHeight = 0.7;

    /// <param name="chanceOfWetting">That water reaches it, where a level is known on the site's own datum.</param>
    /// <param name="undone">Ids of jobs that change nothing for those after them; null for none.</param>
    public static IReadOnlyList<JobWorth> Of(Item item, Area area, Site site, PeakGusts peaks, double? chanceOfWetting = null, IReadOnlySet<string>? undone = null)
    {
        var worths = new List<JobWorth>();
        var now = new Treated(item.Shape, item.Build, OutOfWind: false, MadeWorse: false);
        var chance = Chance(now);
        var stake = item.ValueUsd;
        foreach (var job in item.Jobs)
        {
            var isDone = undone?.Contains(job.Id) != true;
            if (job.Kind is JobKind.Pick)
            {
                var saved = Picked(item, stake, chance, area, site, peaks);
                if (isDone) stake = Math.Max(0, stake - Gathered(item, stake));
                worths.Add(Told(job, saved, 0, item.Harvest is { } harvest && Share(harvest) == 0 ? new LeftReason(LeftCause.NotRipe) { Crop = harvest.Crop.Words } : null));
                continue;
            }

            var then = JobEffect.After(now.Shape, now.Build, job.Kind, job.Materials, item.Count);
            var after = then.OutOfWind ? 0 : Chance(then);
            var hazard = HazardUsd(item);
            if (IsOfWind(job.Kind) && !now.OutOfWind && ItemChance.Weakest(now.Shape, now.Build) is null)
            {
                worths.Add(Told(job, stake * ItemChance.WhenUnknown, hazard * ItemChance.WhenUnknown, null));
            }
            else if (IsOfWind(job.Kind))
            {
                var difference = Math.Max(0, chance - after);
                worths.Add(Told(job, stake * difference, hazard * difference, WhyLeave(now, then, chance, after)));
                if (isDone && !then.MadeWorse) (now, chance) = (then, after);
            }
            else
            {
                var share = job.Kind is JobKind.Raise or JobKind.Drain ? chanceOfWetting ?? WaterShare : OtherShare;
                worths.Add(Told(job, stake * share, hazard * share, null));
            }
        }

        return worths;

        double Chance(Treated thing) => thing.OutOfWind ? 0 : ItemChance.OfFailing(ItemChance.Weakest(thing.Shape, thing.Build), peaks, site.Terrain, area.Exposure);
    }

    /// <summary>What it weighs that the thing can hit people or reach water, where it surely does; 0 where it endangers nobody.</summary>
    public static double HazardUsd(Item item) => item.Endangers.Count == 0 ? 0 : HazardFactor * Math.Max(item.ValueUsd, LeastHazardUsd);

    /// <summary>Work that is done because of the wind; the rest is against water, current or time.</summary>
    private static bool IsOfWind(JobKind kind) => kind is not (JobKind.Raise or JobKind.Drain or JobKind.SwitchOff or JobKind.Check or JobKind.Pick);

    private static LeftReason? WhyLeave(Treated now, Treated then, double chance, double after)
    {
        if (then.MadeWorse) return LeftCause.WouldStandLess;
        if (now.OutOfWind) return LeftCause.OutOfWind;
        if (chance - after >= LeastDifference) return null;
        return chance < LeastDifference ? LeftCause.StandsThisWind : LeftCause.NoDifference;
    }

    /// <summary>A value that the gardener gave stands, and such a job is never left.</summary>
    private static JobWorth Told(Job job, double loss, double hazard, LeftReason? leave) =>
        job.ValueStated ? new(job, job.Value, job.HazardToOthers, null) : new(job, loss, hazard, leave);

    /// <summary>Fruit is lost with its plant or falls from it.</summary>
    private static double Picked(Item item, double stake, double plantFails, Area area, Site site, PeakGusts peaks)
    {
        if (item.Harvest is not { } harvest) return stake * plantFails;
        var falls = ItemChance.OfFailingAt(harvest.Crop.ShedsAtMps, Fragility.BetaGrown, (item.Build.HeightM ?? UnknownPlantM) * FruitAtShareOfHeight, peaks, site.Terrain, area.Exposure);
        return harvest.ValueUsd * Share(harvest) * (1 - (1 - plantFails) * (1 - falls));
    }

    /// <summary>What is worth picking: the ripe, and the full grown where it ripens off the plant (trade.md 3.1).</summary>
    private static double Share(Harvest harvest) => harvest.Ripe + (harvest.Crop.RipensOff ? harvest.Mature : 0);

    private static double Gathered(Item item, double stake) => item.Harvest is { } harvest ? harvest.ValueUsd * Share(harvest) : stake;
}
