using LiteDB;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>An answer by mail that was taken or told of.</summary>
/// <param name="Told">Address to which a short mail about it went; null when none did.</param>
public sealed record ReplyMark(string Id, Instant At, string Outcome, string? Told);

/// <summary>Which answers by mail have been settled, so that none is taken twice and nobody is told twice.</summary>
public static class ReplyMarks
{
    /// <param name="letterId">The message answered; "" when it is not known.</param>
    /// <param name="mailId">The answer's own.</param>
    public static string IdOf(string letterId, string mailId) => Fingerprint.Of("reply", letterId, mailId);

    public static bool Has(StoreReader reader, string id) => reader.Collection(Schema.Replies).FindById(id) is not null;

    /// <summary>The first time stands.</summary>
    public static void Add(StoreTransaction transaction, ReplyMark mark)
    {
        if (Has(transaction, mark.Id)) return;
        transaction.Collection(Schema.Replies).Insert(new BsonDocument
        {
            ["_id"] = mark.Id,
            ["at"] = Bson.From(mark.At),
            ["outcome"] = mark.Outcome,
            ["toldMark"] = Bson.From(mark.Told is { } address ? ToldMarkOf(address) : null),
        });
    }

    /// <summary>How many short mails went to an address since a time.</summary>
    public static int ToldSince(StoreReader reader, string address, Instant since) =>
        reader.Collection(Schema.Replies).Count(Query.And(Query.EQ("toldMark", ToldMarkOf(address)), Query.GTE("at", Bson.From(since))));

    private static string ToldMarkOf(string address) => Fingerprint.Of(address.ToLowerInvariant());
}
