using LiteDB;
using StormClock.Service.Photos;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>
/// Which photo shows what. The files are beside the database: put the file first and then its note, take away the note first and then
/// the file, so that no note ever names a file that is not there. (What is set aside goes the other way, see <see cref="PhotoDesk.SetAsideAsync"/>.)
/// </summary>
public static class PhotoNotes
{
    public static PhotoNote? Find(StoreReader reader, string id) =>
        reader.Collection(Schema.PhotoNotes).FindById(id) is { } found ? PhotoNoteMapping.FromBson(found) : null;

    /// <summary>Oldest first.</summary>
    public static IReadOnlyList<PhotoNote> OfGarden(StoreReader reader, string gardenId) =>
        [.. reader.Collection(Schema.PhotoNotes).Find(Query.EQ("gardenMark", PhotoNoteMapping.MarkOf(gardenId)))
            .Select(PhotoNoteMapping.FromBson).OrderBy(note => note.At).ThenBy(note => note.Id, StringComparer.Ordinal)];

    /// <summary>Oldest first.</summary>
    public static IReadOnlyList<PhotoNote> Of(StoreReader reader, string gardenId, string subject) =>
        [.. OfGarden(reader, gardenId).Where(note => note.Subject == subject)];

    public static void Put(StoreTransaction transaction, PhotoNote note) => transaction.Collection(Schema.PhotoNotes).Upsert(PhotoNoteMapping.ToBson(note));

    public static void Remove(StoreTransaction transaction, string id) => transaction.Collection(Schema.PhotoNotes).Delete(id);
}
