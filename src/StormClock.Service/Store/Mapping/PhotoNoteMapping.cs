using LiteDB;
using StormClock.Service.Photos;

namespace StormClock.Service.Store.Mapping;

internal static class PhotoNoteMapping
{
    public static string MarkOf(string gardenId) => Fingerprint.Of(gardenId);

    public static BsonDocument ToBson(PhotoNote note) => new()
    {
        ["_id"] = note.Id,
        ["gardenMark"] = MarkOf(note.GardenId),
        ["garden"] = note.GardenId,
        ["subject"] = note.Subject,
        ["file"] = note.FileName,
        ["at"] = Bson.From(note.At),
        ["by"] = note.By,
        ["widthPx"] = note.WidthPx,
        ["heightPx"] = note.HeightPx,
    };

    public static PhotoNote FromBson(BsonDocument document) => new(
        document["_id"].AsString,
        document["garden"].AsString,
        document["subject"].AsString,
        document["file"].AsString,
        Bson.ToInstant(document["at"]),
        document["by"].AsString,
        document["widthPx"].AsInt32,
        document["heightPx"].AsInt32);
}
