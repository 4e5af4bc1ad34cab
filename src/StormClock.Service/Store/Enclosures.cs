using LiteDB;
using StormClock.Service.Delivery;
using StormClock.Service.Outbox;

namespace StormClock.Service.Store;

/// <summary>
/// What goes with a letter, by the id of its outbox entry. Kept apart from the entries, which are all read at every turn,
/// and only as long as the letter may still have to be sent.
/// </summary>
public static class Enclosures
{
    /// <summary>Empty when the entry has none (any more).</summary>
    public static IReadOnlyList<Enclosure> Of(StoreReader reader, string entryId) =>
        reader.Collection(Schema.Enclosures).FindById(entryId) is { } found
            ? [.. found["parts"].AsArray.Select(part => new Enclosure(part["name"].AsString, part["type"].AsString, part["bytes"].AsBinary))]
            : [];

    /// <summary>Replaces what the entry had.</summary>
    public static void Put(StoreTransaction transaction, string entryId, IReadOnlyList<Enclosure> enclosures)
    {
        if (enclosures.Count == 0)
        {
            transaction.Collection(Schema.Enclosures).Delete(entryId);
            return;
        }

        var parts = enclosures.Select(part => new BsonDocument { ["name"] = part.FileName, ["type"] = part.MediaType, ["bytes"] = part.Bytes.ToArray() });
        transaction.Collection(Schema.Enclosures).Upsert(new BsonDocument { ["_id"] = entryId, ["parts"] = new BsonArray(parts) });
    }

    /// <summary>
    /// Drops them with the entry's last try. An entry that was tried and then withdrawn or expired keeps them: wanted again,
    /// it goes out with the same bytes.
    /// </summary>
    public static void DropWhereDone(StoreTransaction transaction, OutboxEntry entry)
    {
        var done = entry.State switch
        {
            OutboxState.Sent or OutboxState.Refused => true,
            OutboxState.Expired or OutboxState.Withdrawn => entry.Attempts == 0,
            _ => false,
        };
        if (done) transaction.Collection(Schema.Enclosures).Delete(entry.Id);
    }
}
