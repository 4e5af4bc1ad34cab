using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>Taking entries out of a book. What others still stand in, belong to or wait for is refused with their names.</summary>
public static partial class BookChange
{
    /// <summary>So many are named; of the rest only the number.</summary>
    private const int MostNamed = 4;

    public static BookOutcome<Item> RemoveItem(GardenBook book, string id, EntryMark mark) =>
        Remove(book.Items, id, mark, Entries.Item, items => book with { Items = items }, _ =>
            from job in book.Jobs
            where job.ItemId != id && job.After.Any(other => other.StartsWith($"{id}/", StringComparison.Ordinal))
            select ($"the job '{job.Id}' comes after one of its jobs", "take that out of its 'after' first"));

    public static BookOutcome<Area> RemoveArea(GardenBook book, string id, EntryMark mark) =>
        Remove(book.Areas, id, mark, Entries.Area, areas => book with { Areas = areas }, _ =>
            from item in book.Items where item.AreaId == id select ($"the item '{item.Id}' stands in it", "move it to another area or remove it first"));

    /// <summary>Refused for the last person, and where work is left that needs more people than there are.</summary>
    public static BookOutcome<Person> RemovePerson(GardenBook book, string id, EntryMark mark) =>
        Remove(book.People, id, mark, Entries.Person, people => book with { People = people }, rest =>
        {
            if (rest.Count == 0) return [("nobody else is in the book", "add somebody first")];

            var hands = rest.Count(person => person.Role != PersonRole.Keeper);
            return from job in book.Jobs
                   where hands > 0 && hands < job.People && !job.Typical && !job.LeftOut.HasFlag(JobParts.People)
                   select ($"the job '{job.Id}' needs {job.People} people", "find a way for fewer, or add somebody first");
        });

    /// <summary>Ways to it go out of the other sites with it.</summary>
    public static BookOutcome<Site> RemoveSite(GardenBook book, string id, EntryMark mark) =>
        Remove(book.Sites, id, mark, Entries.Site, sites => book with { Sites = [.. sites.Select(site => site.TravelMinutes.ContainsKey(id) ? site with { TravelMinutes = With(site.TravelMinutes, id, null) } : site)] }, _ =>
            (from area in book.Areas where area.SiteId == id select ($"the area '{area.Id}' belongs to it", "move it to another site or remove it first"))
            .Concat(from store in book.Stores where store.SiteId == id select ($"the store '{store.Id}' belongs to it", "move it to another site or remove it first")));

    public static BookOutcome<StorePlace> RemoveStore(GardenBook book, string id, EntryMark mark) =>
        Remove(book.Stores, id, mark, Entries.Store, stores => book with { Stores = stores }, _ =>
            from job in book.Jobs where job.StoreId == id select ($"the job '{job.Id}' brings things into it", "name another store there first"));

    public static BookOutcome<Supply> RemoveSupply(GardenBook book, string material, EntryMark mark) =>
        Remove(book.Supplies, material, mark, Entries.Supply, supplies => book with { Supplies = supplies }, _ => []);

    /// <param name="ties">What holds the entry in the book, given what would be left of its list: each with the reason and the mend.</param>
    private static BookOutcome<T> Remove<T>(
        IReadOnlyList<T> entries, string id, EntryMark mark, Sort<T> sort, Func<IReadOnlyList<T>, GardenBook> with, Func<IReadOnlyList<T>, IEnumerable<(string Reason, string Mend)>> ties)
        where T : class
    {
        var now = entries.FirstOrDefault(other => sort.Id(other) == id);
        if (now is null || sort.Mark(now) != mark) return new BookOutcome<T>.Conflict(now);

        var rest = entries.Where(other => sort.Id(other) != id).ToList();
        var held = ties(rest).ToList();
        if (held.Count == 0) return new BookOutcome<T>.Changed(with(rest));

        var named = held.Take(MostNamed).Select(tie => Fault(sort.Noun, id, $"cannot be removed: {tie.Reason}; {tie.Mend}"));
        return new BookOutcome<T>.Refused([.. named, .. held.Count > MostNamed ? [Fault(sort.Noun, id, $"is held by {held.Count - MostNamed} more like these")] : Array.Empty<Core.ReadFault>()]);
    }
}
