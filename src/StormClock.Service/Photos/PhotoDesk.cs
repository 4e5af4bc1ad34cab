using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Store;
using StormClock.Service.Wording;

namespace StormClock.Service.Photos;

/// <summary>Photos with their notes: kept, found and taken away as one.</summary>
public sealed class PhotoDesk(StormStore store, PhotoShelf shelf, IClock clock)
{
    /// <summary>Of one item, and of what became of it in a spell (C): from each side.</summary>
    public const int MostOfItem = 8;

    public static string ItemSubject(string itemId) => $"item/{itemId}";

    public static string SketchSubject(string siteId) => $"sketch/{siteId}";

    /// <summary>What became of an item in one spell.</summary>
    public static string OutcomeSubject(string episodeId, string itemId) => $"recheck/{episodeId}/{itemId}";

    /// <summary>Those sent with the outcomes of one spell, by item id, oldest first.</summary>
    public ILookup<string, PhotoNote> OfOutcomes(string gardenId, string episodeId)
    {
        var begin = OutcomeSubject(episodeId, "");
        return store.Read(reader => PhotoNotes.OfGarden(reader, gardenId)).Where(note => note.Subject.StartsWith(begin, StringComparison.Ordinal)).ToLookup(note => note.Subject[begin.Length..]);
    }

    /// <summary>Oldest first.</summary>
    public IReadOnlyList<PhotoNote> Of(string gardenId, string subject) => store.Read(reader => PhotoNotes.Of(reader, gardenId, subject));

    /// <summary>Null where the garden has no photo of that name.</summary>
    public PhotoNote? Find(string gardenId, string name) =>
        store.Read(reader => PhotoNotes.Find(reader, name)) is { } note && note.GardenId == gardenId ? note : null;

    /// <summary>The file itself, or its thumbnail; null where it is not there.</summary>
    public FileStream? Open(PhotoNote note, bool thumbnail) => shelf.Find(note.GardenId, note.FileName, thumbnail);

    /// <summary>One more photo of an item, or of what became of it.</summary>
    /// <param name="subject">From <see cref="ItemSubject"/> or <see cref="OutcomeSubject"/>.</param>
    /// <param name="by">Id of the person.</param>
    /// <returns>A fault that can be shown to its sender where there are too many.</returns>
    public Task<ReadResult<PhotoNote>> AddAsync(string gardenId, string subject, Photo photo, string by, Speech speech) =>
        KeepAsync(gardenId, subject, photo, by, speech, (transaction, note) => PhotoNotes.Of(transaction, gardenId, note.Subject).Count < MostOfItem ? [] : null);

    /// <summary>The sketch of a site, in place of the one before.</summary>
    /// <param name="widthDm">Of the ground that it shows.</param>
    public Task<ReadResult<PhotoNote>> PutSketchAsync(string gardenId, string siteId, Photo photo, int widthDm, string by, Speech speech) =>
        KeepAsync(gardenId, SketchSubject(siteId), photo, by, speech, (transaction, note) =>
        {
            SketchWidths.Put(transaction, gardenId, siteId, widthDm);
            return PhotoNotes.Of(transaction, gardenId, note.Subject);
        });

    /// <summary>Takes one away for good; nothing happens where there is none of that name and subject.</summary>
    public async Task RemoveAsync(string gardenId, string subject, string name)
    {
        if (Find(gardenId, name) is not { } note || note.Subject != subject) return;
        await store.WriteAsync(transaction => PhotoNotes.Remove(transaction, note.Id));
        shelf.Remove(gardenId, note.FileName);
    }

    /// <summary>
    /// Sets aside the photos of what has left the books, so that they are never shown with a later thing that gets the same id; none is
    /// deleted. Gardens without a book are left alone: their file may only be away for a moment.
    /// </summary>
    /// <returns>Why some could not be; they stay as they are until the next time.</returns>
    public async Task<IReadOnlyList<string>> SetAsideAsync(IReadOnlyList<GardenBook> books)
    {
        var troubles = new List<string>();
        foreach (var book in books)
        {
            foreach (var note in store.Read(reader => PhotoNotes.OfGarden(reader, book.Id)).Where(note => !Has(book, note.Subject)))
            {
                try
                {
                    // The file first: after a crash in between it is found aside the next time, and the note goes then.
                    shelf.SetAside(note);
                    await store.WriteAsync(transaction => PhotoNotes.Remove(transaction, note.Id));
                }
                catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
                {
                    troubles.Add($"{book.Id}: the photo {note.FileName} of '{note.Subject}', which left the book, cannot be put into photos/{book.Id}/gone; check the disk and who may write there ({trouble.Message.TrimEnd('.')})");
                }
            }
        }

        return troubles;
    }

    /// <summary>Whether the book still has what a photo shows.</summary>
    private static bool Has(GardenBook book, string subject) => subject.Split('/') switch
    {
        ["sketch", var site] => book.Sites.Any(known => known.Id == site),
        [_, .., var item] => book.Items.Any(known => known.Id == item),
        _ => false,
    };

    /// <param name="place">Says which earlier notes the new one replaces; null that it cannot be taken.</param>
    private async Task<ReadResult<PhotoNote>> KeepAsync(
        string gardenId, string subject, Photo photo, string by, Speech speech, Func<StoreTransaction, PhotoNote, IReadOnlyList<PhotoNote>?> place)
    {
        var put = shelf.Put(gardenId, photo, speech);
        if (put.Value is not { } name) return ReadResult.Bad<PhotoNote>(put.Faults);

        var note = new PhotoNote(name, gardenId, subject, name, clock.GetCurrentInstant(), by, photo.WidthPx, photo.HeightPx);
        var replaced = await store.WriteAsync(transaction =>
        {
            if (place(transaction, note) is not { } earlier) return null;
            PhotoNotes.Put(transaction, note);
            foreach (var old in earlier) PhotoNotes.Remove(transaction, old.Id);
            return earlier;
        });
        if (replaced is null)
        {
            shelf.Remove(gardenId, name);
            return new ReadFault("photo", speech.Say("photo.item-full", ("count", MostOfItem)));
        }

        foreach (var old in replaced) shelf.Remove(gardenId, old.FileName);
        return note;
    }
}
