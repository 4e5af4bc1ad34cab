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
    private static readonly HashSet<string> Nothing = [];

    /// <summary>By site id.</summary>
    /// <summary>By site id.</summary>
    public IReadOnlyDictionary<string, PeakGusts> Peaks { get; private init; } = new Dictionary<string, PeakGusts>();

    private WaterLevel? Level { get; init; }

    /// <summary>Without members there is no peak gust to value by: the book's own values stand.</summary>
    public static ValuedGarden Of(GardenBook book, IReadOnlyList<SiteWind> winds, WaterNote? water = null) =>
        new ValuedGarden(book, new Dictionary<string, LeftReason>())
        {
            Peaks = winds.ToDictionary(wind => wind.Site.Id, wind => PeakGusts.GivenGale(wind.Members)),
            Level = water is null ? null : new WaterLevel(water.LevelM, water.Datum),
        }.Valued(Nothing);

    /// <summary>
    /// The same with some jobs known to stay undone: what else could be done for their items is worth more then. This very garden
    /// when that changes nothing.
    /// </summary>
    public ValuedGarden Without(IReadOnlySet<string> undone)
    {
        var without = Valued(undone);
        return without.Book.Jobs.SequenceEqual(Book.Jobs) && without.BetterLeft.Count == BetterLeft.Count && without.BetterLeft.All(BetterLeft.Contains) ? this : without;
    }

    private ValuedGarden Valued(IReadOnlySet<string> undone)
    {
        var betterLeft = new Dictionary<string, LeftReason>();
        return this with { Book = Book with { Items = [.. Book.Items.Select(item => Valued(item, undone, betterLeft))] }, BetterLeft = betterLeft };
    }

    private Item Valued(Item item, IReadOnlySet<string> undone, Dictionary<string, LeftReason> betterLeft)
    {
        var area = Book.AreaOf(item);
        var site = Book.SiteOf(area);
        if (!Peaks.TryGetValue(area.SiteId, out var gusts)) return item;
        var worths = ItemWorth.Of(item, area, site, gusts, ChanceOfWetting(item, area, site), undone);
        foreach (var worth in worths.Where(worth => worth.WhyLeave is not null)) betterLeft[worth.Job.Id] = worth.WhyLeave!;
        return item with { Jobs = [.. worths.Select(worth => worth.Job with { Value = worth.LossAvoidedUsd, HazardToOthers = worth.HazardAvoidedUsd })] };
    }

    // A level on another datum, or a place of unknown height, says nothing.
    private double? ChanceOfWetting(Item item, Area area, Site site) =>
        Level is not null && Level.WhyNot(site.Datum) is null && (area.GroundM ?? site.GroundM) is { } groundM
            ? Level.ChanceOfWetting(groundM + (item.Build.RaisedM ?? 0))
            : null;
}
