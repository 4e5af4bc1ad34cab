using LiteDB;

namespace StormClock.Service.Store;

/// <summary>The marks of entries of a list that have been fetched and kept.</summary>
public static class FeedEntries
{
    public static void Put(StoreTransaction transaction, string feed, IEnumerable<string> marks) =>
        transaction.Collection(Schema.FeedEntries).Upsert(new BsonDocument
        {
            ["_id"] = Fingerprint.Of(feed),
            ["feed"] = feed,
            ["marks"] = new BsonArray(marks.Order(StringComparer.Ordinal).Select(mark => new BsonValue(mark))),
        });

    public static IReadOnlyList<string> Of(StoreReader reader, string feed) =>
        reader.Collection(Schema.FeedEntries).FindById(Fingerprint.Of(feed)) is { } found ? [.. found["marks"].AsArray.Select(mark => mark.AsString)] : [];
}
