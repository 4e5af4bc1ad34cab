using StormClock.Core.Units;

namespace StormClock.Core.Garden;

/// <summary>
/// The survey of one garden: places, things, work and people. Written by the gardener, never changed by the service.
/// Ids are unique within their list, lower case, made of letters, digits and hyphens.
/// </summary>
/// <param name="Practice">An invented garden: rehearsed, never served or mailed for.</param>
public sealed record GardenBook(
    string Id,
    string Name,
    DateTimeZone Zone,
    UnitSystem Units,
    bool Practice,
    IReadOnlyList<Person> People,
    IReadOnlyList<Site> Sites,
    IReadOnlyList<Area> Areas,
    IReadOnlyList<Item> Items,
    IReadOnlyList<Supply> Supplies,
    IReadOnlyList<StorePlace> Stores,
    IReadOnlyDictionary<WorkClass, WorkLimit> Limits)
{
    public IEnumerable<Job> Jobs => Items.SelectMany(item => item.Jobs);

    public Item ItemOf(Job job) => Items.First(item => item.Id == job.ItemId);

    public Area AreaOf(Item item) => Areas.First(area => area.Id == item.AreaId);

    public Site SiteOf(Area area) => Sites.First(site => site.Id == area.SiteId);
}

/// <summary>Wind at the garden at which a class of work stops, m/s: sustained and gust, whichever comes first.</summary>
public sealed record WorkLimit(double SustainedMps, double GustMps)
{
    /// <summary>Defaults of product.md 2; sources and marks in trade.md 1.1.</summary>
    public static IReadOnlyDictionary<WorkClass, WorkLimit> Defaults { get; } = new Dictionary<WorkClass, WorkLimit>
    {
        [WorkClass.Sheet] = new(7.6, 11.6),
        [WorkClass.Ladder] = new(8.9, 11.2),
        [WorkClass.Saw] = new(8.9, 11.2),
        [WorkClass.Carry] = new(13.4, 17.9),
        [WorkClass.Ground] = new(15.0, 20.1),
    };
}

/// <param name="Hours">When this person can work, local time; empty means all daylight of every day.</param>
/// <param name="DaysOff">Local dates on which this person does not work at all.</param>
/// <param name="LiftKg">Heaviest load this person lifts alone, kg.</param>
public sealed record Person(
    string Id,
    string Name,
    string? Email,
    PersonRole Role,
    IReadOnlyList<WorkHours> Hours,
    IReadOnlyList<LocalDate> DaysOff,
    double LiftKg,
    bool LadderAlone);

/// <summary>Hours in which a person can work, on the named weekdays or on one date.</summary>
/// <param name="Days">Weekdays; empty when <paramref name="Date"/> is given.</param>
public sealed record WorkHours(IReadOnlyList<IsoDayOfWeek> Days, LocalDate? Date, LocalTime From, LocalTime To)
{
    public bool HoldsOn(LocalDate date) => Date is { } only ? only == date : Days.Contains(date.DayOfWeek);
}

/// <param name="TravelMinutes">Minutes one way to another site, by its id.</param>
/// <param name="Codes">Zone and county codes the place lies in, e.g. FLZ065, for alerts that name codes only.</param>
public sealed record Site(
    string Id,
    string Name,
    GeoPoint At,
    Terrain Terrain,
    IReadOnlyDictionary<string, int> TravelMinutes,
    IReadOnlyList<string> Codes);

public sealed record Area(string Id, string Name, string SiteId, Exposure Exposure);

/// <param name="Kind">Item kind in the trade's words, e.g. <c>potted_tree</c>.</param>
/// <param name="ValueUsd">What the whole line is worth to the gardener, in her money.</param>
/// <param name="Endangers">Who or what it can hurt, e.g. <c>neighbour_window</c>; empty when nothing.</param>
public sealed record Item(
    string Id,
    string Name,
    string Kind,
    string AreaId,
    int Count,
    double MassKg,
    double ValueUsd,
    IReadOnlyList<string> Endangers,
    IReadOnlyList<Job> Jobs);

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
    bool LastRound);

public sealed record MaterialNeed(string Material, double Quantity, string Unit);

public sealed record Supply(string Material, double Quantity, string Unit);

/// <summary>A place things are moved into: free floor and volume; null when not given.</summary>
public sealed record StorePlace(string Id, string Name, string SiteId, double? FloorM2, double? VolumeM3);
