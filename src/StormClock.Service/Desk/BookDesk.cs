using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books.Edits;
using StormClock.Service.Photos;
using StormClock.Service.Store;
using StormClock.Service.Wakeups;

namespace StormClock.Service.Desk;

/// <summary>Changes garden books for the pages: into the file, into force, and a turn that plans by it.</summary>
public sealed class BookDesk(GardenShelf shelf, StormStore store, PhotoDesk photos, Turns turns, IClock clock) : IDisposable
{
    /// <summary>What follows from a change may take its time; whoever made it need not wait longer than this.</summary>
    private static readonly TimeSpan LongestHold = TimeSpan.FromSeconds(2);

    private readonly SemaphoreSlim forms = new(1);

    /// <summary>Null where the garden has no file, as in a rehearsal: then it cannot be changed. After a conflict the book is in force that somebody else wrote.</summary>
    public async Task<BookSave<T>?> ChangeAsync<T>(string gardenId, Func<GardenBook, BookOutcome<T>> change)
        where T : class
    {
        if (shelf.FileOf(gardenId) is not { } file) return null;
        var save = await Task.Run(() => BookEditor.Save(file, change, clock.GetCurrentInstant()));
        if (save is BookSave<T>.Saved or BookSave<T>.Conflict) await FollowAsync();
        return save;
    }

    /// <summary>A new book, under an id that no other has.</summary>
    public async Task<ReadResult<GardenBook>> CreateAsync(GardenBook book)
    {
        var id = EntryIds.Free(book.Id, [.. shelf.Books.Select(known => known.Id)]);
        if (shelf.Folder is not { } folder) return ReadFault.At(1, "gardens cannot be added here");
        Directory.CreateDirectory(folder);
        var made = BookEditor.Create(Path.Combine(folder, $"{id}.yaml"), book with { Id = id });
        if (made.IsGood) await FollowAsync();
        return made;
    }

    /// <summary>
    /// Does what a form asks, unless one with its mark was taken before: a form that comes again, because its answer got lost or it was pressed twice, changes
    /// nothing twice. One form after the other, so that of two at the same moment the second sees the mark of the first.
    /// </summary>
    /// <param name="isTaken">Whether it was done; what was refused may be sent again.</param>
    public async Task<(bool WasTaken, T? Done)> OnceAsync<T>(string once, string by, Func<Task<T>> act, Func<T, bool> isTaken, CancellationToken cancellation)
    {
        await forms.WaitAsync(cancellation);
        try
        {
            var mark = $"form {once}";
            if (store.Read(reader => Presses.OfToken(reader, mark)).Count > 0) return (true, default);
            var done = await act();

            // Done is done, also where nobody waits for the answer any more.
            if (isTaken(done)) await store.WriteAsync(transaction => Presses.Add(transaction, new(mark, "taken", clock.GetCurrentInstant(), by)), CancellationToken.None);
            return (false, done);
        }
        finally
        {
            forms.Release();
        }
    }

    public void Dispose() => forms.Dispose();

    private async Task FollowAsync()
    {
        shelf.Refresh();

        // Before anybody is answered: the next change may bring a new thing under the id of one that has just gone.
        await photos.SetAsideAsync(shelf.Books);
        await Task.WhenAny(turns.TakeAsync(listen: false, CancellationToken.None), Task.Delay(LongestHold, TimeProvider.System));
    }
}
