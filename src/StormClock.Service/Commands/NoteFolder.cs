using StormClock.Core.Advisories;
using StormClock.Core.Formats.Notes;
using StormClock.Service.Feeds;

namespace StormClock.Service.Commands;

/// <summary>The folder through which notes reach the service; they stay there.</summary>
internal static class NoteFolder
{
    /// <summary>Notes of a garden that still hold; files that hold no note are passed over.</summary>
    public static IReadOnlyList<Note> Standing(string folder, string gardenId, Instant now)
    {
        var ledger = AdvisoryLedger.Empty;
        if (!Directory.Exists(folder)) return [];
        foreach (var file in MessageFiles.In(folder))
        {
            if (NoteReader.Read(File.ReadAllBytes(file.FullName)).Value is { } note) ledger = ledger.With(note, note.Made);
        }

        return ledger.Notes(now, gardenId);
    }

    /// <summary>Written beside and moved into place, so that the service never reads half a note. False when one of its kind was made in this very second.</summary>
    public static bool Keep(string folder, Note note)
    {
        var file = Path.Combine(Directory.CreateDirectory(folder).FullName, string.Concat(note.Id.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')) + ".json");
        if (File.Exists(file)) return false;
        File.WriteAllBytes(file + ".new", NoteReader.Write(note));
        File.Move(file + ".new", file, overwrite: true);
        return true;
    }
}
