using System.Collections.Concurrent;
using StormClock.Core;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>
/// The one way in which the file of a garden book is written. A change is made to the book as the file says it at that moment,
/// so that what somebody wrote by hand meanwhile stays; a crash leaves the old file or the new one whole. One writer at a time
/// in this process; another program that writes in the blink between the last look and the replacing is not seen.
/// </summary>
public static class BookEditor
{
    /// <summary>Somebody who saves by hand does so once; more than this is a program at work on the same file.</summary>
    private const int MostTries = 5;

    private static readonly ConcurrentDictionary<string, Lock> Writers = new();

    /// <summary>Makes a change in a file.</summary>
    /// <param name="change">Given the book as it is now; called again when the file changes under its hands.</param>
    /// <param name="now">Names the old file where it is kept: <c>NAME.yaml.20270922T120000Z.bak</c>, beside it.</param>
    public static BookSave<T> Save<T>(string path, Func<GardenBook, BookOutcome<T>> change, Instant now)
        where T : class
    {
        lock (WriterOf(path))
        {
            for (var tries = 0; tries < MostTries; tries++)
            {
                if (Try(path, change, now) is { } done) return done;
            }
        }

        return Refused<T>(path, "is written by another program all the time; nothing was saved, try again later");
    }

    /// <summary>Writes the file of a new garden. A file that is there is left alone, as is one whose garden has the same id.</summary>
    /// <returns>The book as it will be read.</returns>
    public static ReadResult<GardenBook> Create(string path, GardenBook book)
    {
        var text = GardenWriter.Write(book);
        var read = GardenReader.Read(text, path);
        if (!read.IsGood) return read;

        lock (WriterOf(path))
        {
            try
            {
                var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
                if (GardenFiles.Load(folder).FirstOrDefault(file => file.InForce?.Id == book.Id) is { } twin) return Fault(path, $"would have the garden id '{book.Id}', which {Path.GetFileName(twin.File)} has; choose another id");
                return WholeFile.Create(path, text) ? read : Fault(path, "is there already; choose another name");
            }
            catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
            {
                return Unwritable(path, trouble);
            }
        }
    }

    /// <returns>Null where the file has changed meanwhile.</returns>
    private static BookSave<T>? Try<T>(string path, Func<GardenBook, BookOutcome<T>> change, Instant now)
        where T : class
    {
        var disk = BookOnDisk.Read(path);
        if (disk.Book.Value is not { } book) return new BookSave<T>.Broken(disk.Book.Faults);

        return change(book) switch
        {
            BookOutcome<T>.Changed { Book: var wanted } => Written<T>(path, disk, book, wanted, now),
            BookOutcome<T>.Conflict { Now: var other } => new BookSave<T>.Conflict(other),
            BookOutcome<T>.Refused { Faults: var faults } => new BookSave<T>.Refused(faults),
            _ => throw new InvalidOperationException("A change has an outcome that nobody knows."),
        };
    }

    private static BookSave<T>? Written<T>(string path, BookOnDisk disk, GardenBook book, GardenBook wanted, Instant now)
        where T : class
    {
        var made = BookText.Rewrite(disk.Text, path, book, wanted, disk.Beside);
        if (made.Value is not { } rewrite) return new BookSave<T>.Refused(made.Faults);
        if (rewrite.Text == disk.Text) return new BookSave<T>.Saved(rewrite, null);

        try
        {
            var keeps = rewrite is BookRewrite.Whole or BookRewrite.Kept { TakesRemarks: true };
            var old = keeps ? WholeFile.KeepOld(path, disk.Text, now) : null;
            if (WholeFile.Replace(path, rewrite.Text, disk.IsStill)) return new BookSave<T>.Saved(rewrite, old);

            if (old is not null) File.Delete(old);
            return null;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new BookSave<T>.Refused([Unwritable(path, trouble)]);
        }
    }

    private static Lock WriterOf(string path) => Writers.GetOrAdd(WholeFile.Real(path), _ => new Lock());

    private static BookSave<T>.Refused Refused<T>(string path, string reason)
        where T : class => new([Fault(path, reason)]);

    private static ReadFault Fault(string path, string reason) => new(Path.GetFileName(path), $"{Path.GetFileName(path)} {reason}");

    private static ReadFault Unwritable(string path, Exception trouble) =>
        Fault(path, $"cannot be written; check that there is room on the disk and that this user may write in its folder ({trouble.Message.TrimEnd('.')})");
}
