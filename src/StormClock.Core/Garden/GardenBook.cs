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
    /// <summary>When the garden was last walked with this book in hand; null when not given.</summary>
    public LocalDate? Surveyed { get; init; }

    /// <summary>Hours from the word that something is short until it can be in the garden.</summary>
    public double ShoppingHours { get; init; } = UsualShoppingHours;

    /// <summary>A way to the shop and back with a queue in it (C).</summary>
    public const double UsualShoppingHours = 3;

    /// <summary>For whoever does not say otherwise, and for what is nobody's own.</summary>
    public Language Language { get; init; }

    public ClockForm Clock { get; init; }

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
/// <param name="LadderAlone">Goes up a ladder without anybody at its foot.</param>
public sealed record Person(
    string Id,
    string Name,
    string? Email,
    PersonRole Role,
    IReadOnlyList<WorkHours> Hours,
    IReadOnlyList<LocalDate> DaysOff,
    double LiftKg,
    bool LadderAlone)
{
    /// <summary>Where late work is told too when nobody answers; null for nowhere.</summary>
    public string? SecondEmail { get; init; }

    /// <summary>Never goes up a ladder.</summary>
    public bool NoLadder { get; init; }

    public Language Language { get; init; }

    public ClockForm Clock { get; init; }

    /// <summary>Read by this person; null means the garden's.</summary>
    public UnitSystem? Units { get; init; }
}

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
    IReadOnlyList<string> Codes)
{
    /// <summary>What heights of this site are measured from, as the gardener writes it, e.g. <c>NAVD88</c>; null when she does not say.</summary>
    public string? Datum { get; init; }

    /// <summary>Height of the ground above the datum, m, where an area has none of its own; null when not given.</summary>
    public double? GroundM { get; init; }
}

public sealed record Area(string Id, string Name, string SiteId, Exposure Exposure)
{
    /// <summary>Height of the ground above the site's datum, m; null when not given.</summary>
    public double? GroundM { get; init; }

    /// <summary>Distance to open water, m; null when not given. The next two likewise.</summary>
    public double? WaterM { get; init; }

    public double? NeighbourM { get; init; }

    /// <summary>Distance to the nearest glass that is not the item's own.</summary>
    public double? GlassM { get; init; }

    /// <summary>Where it lies on the gardener's own drawing; null when she has not placed it.</summary>
    public PlotRect? Plot { get; init; }
}

public sealed record Supply(string Material, double Quantity, string Unit);

/// <summary>A place things are moved into: free floor and volume; null when not given.</summary>
public sealed record StorePlace(string Id, string Name, string SiteId, double? FloorM2, double? VolumeM3)
{
    /// <summary>Clear width of the door, m; null when not given.</summary>
    public double? DoorM { get; init; }

    /// <summary>Height of the floor or shelf above the ground outside, m; null when not given.</summary>
    public double? RaisedM { get; init; }
}
