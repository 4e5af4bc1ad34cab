using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Core.Worth;
using StormClock.Service.Messages;
using StormClock.Service.Photos;
using StormClock.Service.Visits;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Garden;

/// <summary>Somebody in one room of one garden.</summary>
/// <param name="Books">Those in force, for what this visitor may enter.</param>
/// <param name="Decision">The newest; null until the first look at the forecast after a start has ended.</param>
public sealed record GardenVisit(Visitor Visitor, GardenBook Book, IReadOnlyList<GardenBook> Books, Decision? Decision, GardenRoom Room, Instant Now)
{
    /// <summary>In whose name things are done, and to whom the page speaks.</summary>
    public Person Person { get; } = Visitor.ActsAs(Book);

    /// <summary>Way from the address asked for to the garden's pages: empty in its rooms, <c>../</c> one below.</summary>
    public string Here { get; init; } = "";

    public Speech Speech => Speech.Of(Person, Book.Units);

    public Times Times => new(Book.Zone, Now, Speech);

    public StageStanding Stage => Decision?.Standing.Stage ?? StageStanding.Calm(Now);

    public bool Leave => Decision?.Leave ?? false;

    public Instant? LeaveBy => Decision?.LeaveBy;

    public bool WorkIsOver => Halt.WorkIsOver(Stage.Stage, Leave, LeaveBy, Now);

    public bool SeesAll => Visitor.SeesAll(Book, Books);

    public bool IsKeeper => Visitor.IsKeeper(Books);

    /// <summary>Gusts that the forecast brings to a site; null while there are none.</summary>
    public PeakGusts? PeaksAt(string siteId) => Decision?.Peaks.GetValueOrDefault(siteId) is { At10MMps.Count: > 0 } peaks ? peaks : null;

    /// <summary>Share of those gusts in which a thing fails, 0 to 1; null where either is not known.</summary>
    public double? ChanceOfFailing(Worry worry) =>
        PeaksAt(worry.Area.SiteId) is { } peaks && ItemChance.Weakest(worry.Item.Shape, worry.Item.Build) is { } strength
            ? ItemChance.OfFailing(strength, peaks, Book.SiteOf(worry.Area).Terrain, worry.Area.Exposure)
            : null;

    /// <summary>One's own, or any for whoever sees all.</summary>
    public bool MayTakeAway(PhotoNote photo) => SeesAll || photo.By == Person.Id;

    public bool May(GardenRoom room) => Visitor.MayEnter(room, Book, Books);
}
