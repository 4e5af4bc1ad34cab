using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>
/// Changes to one entry of a book, each made only when the entry is still as it was when somebody began: with the mark it had
/// then, or null for a new one. A new entry whose id is taken gets the next free one. An entry that says already what is wanted
/// is no conflict. Whether the book that comes of it can be read, <see cref="BookText"/> finds out.
/// </summary>
public static partial class BookChange
{
    public static BookOutcome<Item> Put(GardenBook book, Item item, EntryMark? mark) =>
        Put(book.Items, item, mark, Entries.Item, items => book with { Items = items });

    public static BookOutcome<Area> Put(GardenBook book, Area area, EntryMark? mark) =>
        Put(book.Areas, area, mark, Entries.Area, areas => book with { Areas = areas });

    public static BookOutcome<Person> Put(GardenBook book, Person person, EntryMark? mark) =>
        Put(book.People, person, mark, Entries.Person, people => book with { People = people });

    /// <summary>A way back that was as long as the way there stays so.</summary>
    public static BookOutcome<Site> Put(GardenBook book, Site site, EntryMark? mark) =>
        Put(book.Sites, site, mark, Entries.Site, sites => book with { Sites = WaysBack(sites, book.Sites, site) });

    public static BookOutcome<StorePlace> Put(GardenBook book, StorePlace store, EntryMark? mark) =>
        Put(book.Stores, store, mark, Entries.Store, stores => book with { Stores = stores });

    /// <summary>A material stands in the book once: a new supply of one that is there already is a conflict.</summary>
    public static BookOutcome<Supply> Put(GardenBook book, Supply supply, EntryMark? mark)
    {
        var there = book.Supplies.FirstOrDefault(other => other.Material == supply.Material);
        if (mark is null && there is not null && there != supply) return new BookOutcome<Supply>.Conflict(there);

        return Put(book.Supplies, supply, mark ?? (there is null ? null : EntryMark.Of(there)), Entries.Supply, supplies => book with { Supplies = supplies });
    }

    /// <summary>
    /// Takes over what <paramref name="line"/> says of the garden as a whole, and nothing of its lists. Whoever is spoken to as
    /// the garden says goes along with it.
    /// </summary>
    public static BookOutcome<GardenBook> PutGarden(GardenBook book, GardenBook line, EntryMark mark)
    {
        if (line.Id != book.Id) return new BookOutcome<GardenBook>.Refused([Fault("garden", book.Id, $"cannot get another id: links in letters and what is done already go by it; leave it '{book.Id}', and change the name")]);
        if (EntryMark.OfGarden(book) is var now && now != mark && now != EntryMark.OfGarden(line)) return new BookOutcome<GardenBook>.Conflict(book);

        return new BookOutcome<GardenBook>.Changed(line with
        {
            People = [.. book.People.Select(person => person with
            {
                Language = person.Language == book.Language ? line.Language : person.Language,
                Clock = person.Clock == book.Clock ? line.Clock : person.Clock,
            })],
            Sites = book.Sites, Areas = book.Areas, Items = book.Items, Supplies = book.Supplies, Stores = book.Stores, Limits = book.Limits,
        });
    }

    private static BookOutcome<T> Put<T>(IReadOnlyList<T> entries, T entry, EntryMark? mark, Sort<T> sort, Func<IReadOnlyList<T>, GardenBook> with)
        where T : class
    {
        var id = sort.Id(entry);
        if (mark is null) return new BookOutcome<T>.Changed(with([.. entries, sort.WithId(entry, EntryIds.Free(id, [.. entries.Select(sort.Id)]))]));

        var now = entries.FirstOrDefault(other => sort.Id(other) == id);
        if (now is null || (sort.Mark(now) != mark && sort.Mark(now) != sort.Mark(entry))) return new BookOutcome<T>.Conflict(now);

        return new BookOutcome<T>.Changed(with([.. entries.Select(other => sort.Id(other) == id ? entry : other)]));
    }

    private static List<Site> WaysBack(IReadOnlyList<Site> sites, IReadOnlyList<Site> before, Site changed)
    {
        var old = before.FirstOrDefault(site => site.Id == changed.Id)?.TravelMinutes;
        return [.. sites.Select(site => site.Id != changed.Id && old?.GetValueOrDefault(site.Id, -1) == site.TravelMinutes.GetValueOrDefault(changed.Id, -1)
            ? site with { TravelMinutes = With(site.TravelMinutes, changed.Id, changed.TravelMinutes.TryGetValue(site.Id, out var minutes) ? minutes : null) }
            : site)];
    }

    private static Dictionary<string, int> With(IReadOnlyDictionary<string, int> ways, string to, int? minutes)
    {
        var all = new Dictionary<string, int>(ways);
        if (minutes is { } known) all[to] = known;
        else all.Remove(to);
        return all;
    }

    private static ReadFault Fault(string noun, string id, string reason) => new($"{noun} '{id}'", $"{noun} '{id}' {reason}");
}
