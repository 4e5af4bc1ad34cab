using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Web.Garden;

/// <summary>An item as the walk's forms write it.</summary>
internal static class ItemForm
{
    /// <summary>What a page offers, in its order; more stands in the file.</summary>
    public static IReadOnlyList<string> Fields { get; } =
        ["count", "standing", "stands_on", "height", "width", "depth", "mass", "raised", "held_to", "value"];

    /// <param name="before">The item that is changed; null for a new one.</param>
    /// <param name="typed">By key of the book; empty takes a field out.</param>
    public static ReadResult<Item> Read(GardenBook book, Item? before, string id, IReadOnlyDictionary<string, string> typed)
    {
        var read = EntryForm.Read(book with { Items = [.. book.Items.Where(item => item.Id != id)] }, "items", id, before is null ? null : GardenWriter.Of(before), typed);
        return read.Value is { } good ? good.Items[^1] : ReadResult.Bad<Item>(read.Faults);
    }

    /// <summary>What the gardener wrote of an item, by key.</summary>
    public static IReadOnlyDictionary<string, string> Of(Item item) =>
        ItemText.Build(item.Written).Append(("value", ItemText.Value(item))).Append(("count", ItemText.Number(item.Count)))
            .Where(pair => pair.Item2 is not null).ToDictionary(pair => pair.Item1, pair => pair.Item2!);
}
