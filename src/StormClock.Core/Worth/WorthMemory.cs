using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;

namespace StormClock.Core.Worth;

/// <summary>Keeps the newest values of each garden, so that a decision made again on the same news costs nothing. It never changes a result.</summary>
public sealed class WorthMemory
{
    private readonly Dictionary<string, (GardenBook Book, IReadOnlyList<WindMembers> Members, WaterNote? Water, ValuedGarden Valued)> known = [];

    public ValuedGarden Of(GardenBook book, IReadOnlyList<SiteWind> winds, WaterNote? water)
    {
        if (known.TryGetValue(book.Id, out var last) && ReferenceEquals(last.Book, book) && last.Water == water && last.Members.SequenceEqual(winds.Select(wind => wind.Members))) return last.Valued;
        var valued = ValuedGarden.Of(book, winds, water);
        known[book.Id] = (book, [.. winds.Select(wind => wind.Members)], water, valued);
        return valued;
    }
}
