using StormClock.Core.Garden;

namespace StormClock.Service.Desk;

/// <summary>The garden books in force.</summary>
public sealed class GardenShelf(IReadOnlyList<GardenBook> books)
{
    public IReadOnlyList<GardenBook> Books { get; } = books;

    public GardenBook? Find(string gardenId) => Books.FirstOrDefault(book => book.Id == gardenId);
}
