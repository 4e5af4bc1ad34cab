using StormClock.Core.Garden;
using StormClock.Service.Store;

namespace StormClock.Service.Books.Edits;

/// <summary>
/// Short name of what an entry of a book writes, for a page to carry while somebody fills it in. Another mark means that the
/// entry has changed since. What is only typical does not count, nor remarks, layout or units.
/// </summary>
/// <param name="Text">32 hex digits; whatever else a page brings back is the mark of no entry.</param>
public readonly record struct EntryMark(string Text)
{
    public static EntryMark Of(Item item) => Of(GardenWriter.Of(item));

    /// <summary>How the person is spoken to counts, whether it is their own or the garden's.</summary>
    public static EntryMark Of(Person person) => Of(GardenWriter.Of(person, null, null));

    public static EntryMark Of(Area area) => Of(GardenWriter.Of(area));

    public static EntryMark Of(Site site) => Of(GardenWriter.Of(site));

    public static EntryMark Of(StorePlace store) => Of(GardenWriter.Of(store));

    public static EntryMark Of(Supply supply) => Of(GardenWriter.Of(supply));

    /// <summary>Of what the book says of the garden as a whole, in its line <c>garden</c>.</summary>
    public static EntryMark OfGarden(GardenBook book) => Of(GardenWriter.GardenLine(book));

    public override string ToString() => Text;

    private static EntryMark Of(WrittenMap entry) => new(Fingerprint.Of(WrittenForm.OneLine(entry)));
}
