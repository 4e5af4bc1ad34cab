using StormClock.Core.Loads;
using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Core.Worth;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api.Shapes;

/// <summary>The things of a garden by the wind at which they fail, what goes first first. An order of worry, no promise. Gusts are of 3 s at 10 m in the open, m/s.</summary>
/// <param name="Garden">Its id.</param>
/// <param name="Now">When this was told.</param>
/// <param name="Peaks">What the forecast brings, by site; empty while no forecast does.</param>
/// <param name="Items">What goes first comes first; those of which nothing can be said come last.</param>
internal sealed record ApiItems(string Garden, Instant Now, IReadOnlyList<ApiPeak> Peaks, IReadOnlyList<ApiItem> Items)
{
    public static ApiItems Of(GardenVisit visit, IReadOnlyList<LimitMove> moves) => new(
        visit.Book.Id,
        visit.Now,
        [.. from site in visit.Book.Sites let peak = visit.PeaksAt(site.Id) where peak is not null select new ApiPeak(site.Id, ApiItem.Tenth(peak.LowMps), ApiItem.Tenth(peak.MiddleMps), ApiItem.Tenth(peak.HighMps))],
        [.. OrderOfWorry.Of(visit.Book).Select(worry => ApiItem.Of(visit, worry, moves.FirstOrDefault(move => move.Item.Id == worry.Item.Id)))]);
}

/// <summary>The strongest gust that the forecast brings to a site, given that the wind comes.</summary>
/// <param name="Site">Its id.</param>
/// <param name="LowMps">One case in ten stays below.</param>
/// <param name="LikelyMps">One in two stays below.</param>
/// <param name="HighMps">Nine in ten stay below.</param>
internal sealed record ApiPeak(string Site, double LowMps, double LikelyMps, double HighMps);

/// <summary>How much wind one thing stands where it is.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">As the book has it.</param>
/// <param name="Kind">What kind of thing, as the catalogue of kinds calls it.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Area">Id of its area.</param>
/// <param name="Site">Id of the site of that area.</param>
/// <param name="FailingGustMps">Gust at which one in two fails; null when nothing can be said.</param>
/// <param name="EarlyGustMps">Gust at which one in ten fails; null when nothing can be said.</param>
/// <param name="Mode">How it fails first; null when nothing can be said.</param>
/// <param name="Chance">Share of the forecast's gusts in which it fails, 0 to 1; null when nothing can be said.</param>
/// <param name="Storms">Storms that it met as it stands, behind the next figure.</param>
/// <param name="SeenGustMps">Gust at which one in two fails, with what was seen in those storms; null when there were none.</param>
internal sealed record ApiItem(
    string Id,
    string Name,
    string Kind,
    int Count,
    string Area,
    string Site,
    double? FailingGustMps,
    double? EarlyGustMps,
    FailureMode? Mode,
    double? Chance,
    int Storms,
    double? SeenGustMps)
{
    /// <param name="move">Null where no storm was met.</param>
    public static ApiItem Of(GardenVisit visit, Worry worry, LimitMove? move) => new(
        worry.Item.Id, worry.Item.Name, worry.Item.Kind, worry.Item.Count, worry.Area.Id, worry.Area.SiteId, Tenth(worry.Gust10MMps), Tenth(worry.EarlyGust10MMps), worry.Mode,
        visit.ChanceOfFailing(worry) is { } chance ? Math.Round(chance, 4) : null, move?.Storms ?? 0, Tenth(move?.Now.MedianMps));

    /// <summary>More figures would say more than is known.</summary>
    public static double Tenth(double mps) => Math.Round(mps, 1);

    private static double? Tenth(double? mps) => mps is { } known ? Tenth(known) : null;
}

/// <summary>The spells of hazard of a garden, and what they taught.</summary>
/// <param name="Garden">Its id.</param>
/// <param name="Now">When this was told.</param>
/// <param name="Storms">Newest first; the first may be under way.</param>
/// <param name="Limits">Things whose limits moved by what was seen. Estimates, no promise.</param>
internal sealed record ApiStorms(string Garden, Instant Now, IReadOnlyList<ApiStorm> Storms, IReadOnlyList<ApiLimit> Limits)
{
    public static ApiStorms Of(GardenVisit visit, IReadOnlyList<Spell> spells, IReadOnlyList<LimitMove> moves) => new(
        visit.Book.Id,
        visit.Now,
        [.. spells.Select(ApiStorm.Of)],
        [.. moves.Select(move => new ApiLimit(move.Item.Id, ApiItem.Tenth(move.BeforeGust10MMps), ApiItem.Tenth(move.Now.MedianMps), move.Storms))]);
}

/// <summary>One spell of hazard.</summary>
/// <param name="Episode">Its name.</param>
/// <param name="Began">When the stage first rose.</param>
/// <param name="Highest">The highest stage before the recheck.</param>
/// <param name="Source">What made it rise to that, as a person would name it.</param>
/// <param name="Closed">When the garden closed; null when it never did.</param>
/// <param name="StoodDown">When the forecast turned away; null when it did not.</param>
/// <param name="Ended">When it ended; null while it lasts.</param>
/// <param name="PeakGustMps">Middle of the forecast's peak gusts by site id, of 3 s at 10 m in the open, m/s.</param>
/// <param name="DoneInTime">Jobs done before the garden closed, or at all where it did not.</param>
/// <param name="DoneAfter">Jobs said to be done only after it had closed.</param>
/// <param name="NotDone">Jobs of which something else was said last.</param>
/// <param name="Outcomes">How many things came to each outcome.</param>
internal sealed record ApiStorm(
    string Episode,
    Instant Began,
    Stage Highest,
    string Source,
    Instant? Closed,
    Instant? StoodDown,
    Instant? Ended,
    IReadOnlyDictionary<string, double> PeakGustMps,
    int DoneInTime,
    int DoneAfter,
    int NotDone,
    IReadOnlyDictionary<string, int> Outcomes)
{
    public static ApiStorm Of(Spell spell)
    {
        var record = spell.Record;
        return new(
            record.EpisodeId, record.Began, record.Highest, record.Source, record.Closed, record.StoodDown, record.Ended,
            record.Gust10MMps.ToDictionary(site => site.Key, site => ApiItem.Tenth(site.Value)), spell.InTime, spell.After, spell.Open,
            spell.Counts.ToDictionary(count => ApiTokens.Of(count.Key), count => count.Value));
    }
}

/// <summary>How the wind that a thing is believed to stand has moved.</summary>
/// <param name="Item">Its id.</param>
/// <param name="BeforeGustMps">By its figures alone.</param>
/// <param name="NowGustMps">With what was seen since.</param>
/// <param name="Storms">How many storms stand behind it.</param>
internal sealed record ApiLimit(string Item, double BeforeGustMps, double NowGustMps, int Storms);
