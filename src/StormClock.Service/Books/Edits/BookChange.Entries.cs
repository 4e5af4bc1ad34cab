using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>What the lists of a book have in common.</summary>
public static partial class BookChange
{
    private sealed record Sort<T>(string Noun, Func<T, string> Id, Func<T, EntryMark> Mark, Func<T, string, T> WithId);

    private static class Entries
    {
        public static readonly Sort<Item> Item = new("item", item => item.Id, EntryMark.Of, WithId);
        public static readonly Sort<Area> Area = new("area", area => area.Id, EntryMark.Of, (area, id) => area with { Id = id });
        public static readonly Sort<Person> Person = new("person", person => person.Id, EntryMark.Of, (person, id) => person with { Id = id });
        public static readonly Sort<Site> Site = new("site", site => site.Id, EntryMark.Of, (site, id) => site with { Id = id });
        public static readonly Sort<StorePlace> Store = new("store", store => store.Id, EntryMark.Of, (store, id) => store with { Id = id });
        public static readonly Sort<Supply> Supply = new("supply", supply => supply.Material, EntryMark.Of, (supply, _) => supply);
    }

    /// <summary>Its jobs go by the item's id, and what they come after of its own does too.</summary>
    private static Item WithId(Item item, string id)
    {
        string Own(string job) => job.StartsWith($"{item.Id}/", StringComparison.Ordinal) ? id + job[item.Id.Length..] : job;
        return item.Id == id ? item : item with { Id = id, Jobs = [.. item.Jobs.Select(job => job with { Id = Own(job.Id), ItemId = id, After = [.. job.After.Select(Own)] })] };
    }
}
