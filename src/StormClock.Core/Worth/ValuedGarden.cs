using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Water;

namespace StormClock.Core.Worth;

/// <summary>A garden whose jobs carry what they are worth under a forecast.</summary>
/// <param name="Book">The same book with the value of each job, and its hazard to others, worked out.</param>
/// <param name="BetterLeft">Why a job is better left, by job id.</param>
public sealed record ValuedGarden(GardenBook Book, IReadOnlyDictionary<string, LeftReason> BetterLeft)
{
    /// <summary>Without members there is no peak gust to value by: the book's own values stand.</summary>
    public static ValuedGarden Of(GardenBook book, IReadOnlyList<SiteWind> winds, WaterNote? water = null)
    {
        var peaks = winds.ToDictionary(wind => wind.Site.Id, wind => PeakGusts.GivenGale(wind.Members));
        var betterLeft = new Dictionary<string, LeftReason>();
        var level = water is null ? null : new WaterLevel(water.LevelM, water.Datum);
        return new(book with { Items = [.. book.Items.Select(Valued)] }, betterLeft);

        Item Valued(Item item)
        {
            var area = book.AreaOf(item);
            var site = book.SiteOf(area);
            if (!peaks.TryGetValue(area.SiteId, out var gusts)) return item;
            var worths = ItemWorth.Of(item, area, site, gusts, ChanceOfWetting(item, area, site));
            foreach (var worth in worths.Where(worth => worth.WhyLeave is not null)) betterLeft[worth.Job.Id] = worth.WhyLeave!;
            return item with { Jobs = [.. worths.Select(worth => worth.Job with { Value = worth.LossAvoidedUsd, HazardToOthers = worth.HazardAvoidedUsd })] };
        }

        // A level on another datum, or a place of unknown height, says nothing.
        double? ChanceOfWetting(Item item, Area area, Site site) =>
            level is not null && level.WhyNot(site.Datum) is null && (area.GroundM ?? site.GroundM) is { } groundM
                ? level.ChanceOfWetting(groundM + (item.Build.RaisedM ?? 0))
                : null;
    }
}
