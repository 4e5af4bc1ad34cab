using LiteDB;
using StormClock.Service.Store;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Outbox;

/// <summary>The outbox as it is stored. The database itself refuses a second entry with the same key.</summary>
public static class OutboxTable
{
    public static OutboxEntry? Find(StoreReader reader, string id) =>
        reader.Collection(Schema.Outbox).FindById(id) is { } found ? OutboxMapping.FromBson(found) : null;

    public static OutboxEntry? FindByKey(StoreReader reader, string key) =>
        reader.Collection(Schema.Outbox).FindOne(Query.EQ("keyMark", OutboxMapping.KeyMarkOf(key))) is { } found
            ? OutboxMapping.FromBson(found) : null;

    /// <summary>Everything ever written for one garden and not forgotten, in order of writing.</summary>
    public static IReadOnlyList<OutboxEntry> OfGarden(StoreReader reader, string gardenId) =>
        InOrder(reader.Collection(Schema.Outbox).Find(Query.EQ("gardenMark", OutboxMapping.GardenMarkOf(gardenId))));

    /// <summary>What reconciling looks at: the letters of what was sent or refused for good are not read, as every turn needs this.</summary>
    public static OutboxStock StockOf(StoreReader reader, string gardenId)
    {
        var outbox = reader.Collection(Schema.Outbox);
        var heads = outbox.Query().Where(Query.EQ("gardenMark", OutboxMapping.GardenMarkOf(gardenId))).Select("{_id, key, state, settled}").ToDocuments()
            .Select(head => (Id: head["_id"], Key: head["key"].AsString, State: Bson.ToEnum<OutboxState>(head["state"]), Settled: Bson.ToInstantOrNull(head["settled"])))
            .ToList();
        return new(
            InOrder(heads.Where(head => !OutboxStock.IsFinal(head.State)).Select(head => outbox.FindById(head.Id))),
            heads.Where(head => OutboxStock.IsFinal(head.State)).ToDictionary(head => head.Key, head => head.State == OutboxState.Sent ? head.Settled : null));
    }

    public static IReadOnlyList<OutboxEntry> InState(StoreReader reader, OutboxState state) =>
        InOrder(reader.Collection(Schema.Outbox).Find(Query.EQ("state", Bson.From(state))));

    public static int Count(StoreReader reader, OutboxState state) =>
        reader.Collection(Schema.Outbox).Count(Query.EQ("state", Bson.From(state)));

    /// <summary>
    /// Waiting entries that need the dispatcher now: their time has come, or their time of use has passed. Urgent ones
    /// first, then by moment.
    /// </summary>
    public static IReadOnlyList<OutboxEntry> Due(StoreReader reader, Instant now) =>
        [.. InState(reader, OutboxState.Waiting).Where(entry => now >= OutboxTimes.NeededAt(entry))
            .OrderByDescending(entry => entry.Urgent).ThenBy(entry => entry.Moment).ThenBy(entry => entry.Id, StringComparer.Ordinal)];

    /// <summary>When the dispatcher is needed next, to send or to expire; null when nothing waits.</summary>
    public static Instant? NextDue(StoreReader reader) =>
        InState(reader, OutboxState.Waiting).Select(entry => (Instant?)OutboxTimes.NeededAt(entry)).Min();

    /// <summary>Throws when the id or the key is there already.</summary>
    public static void Insert(StoreTransaction transaction, OutboxEntry entry) =>
        transaction.Collection(Schema.Outbox).Insert(OutboxMapping.ToBson(entry));

    /// <summary>Throws when there is no entry with that id.</summary>
    public static void Update(StoreTransaction transaction, OutboxEntry entry)
    {
        if (!transaction.Collection(Schema.Outbox).Update(OutboxMapping.ToBson(entry)))
            throw new InvalidOperationException($"There is no outbox entry {entry.Id} to update.");
    }

    /// <summary>
    /// Drops what was settled before the time; returns how many. A forgotten key that is wanted again would be sent
    /// again, so forget only what belongs to episodes long over.
    /// </summary>
    public static int ForgetSettledBefore(StoreTransaction transaction, Instant time) =>
        transaction.Collection(Schema.Outbox).DeleteMany(
            Query.And(Query.Not("settled", BsonValue.Null), Query.LT("settled", Bson.From(time))));

    private static IReadOnlyList<OutboxEntry> InOrder(IEnumerable<BsonDocument> found) =>
        [.. found.Select(OutboxMapping.FromBson).OrderBy(entry => entry.Written).ThenBy(entry => entry.Id, StringComparer.Ordinal)];
}
