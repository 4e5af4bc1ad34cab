using LiteDB;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>Links by which somebody may sign in once. Only their fingerprints are kept: the database opens nothing.</summary>
public static class SignIns
{
    /// <summary>Also drops those that have run out.</summary>
    public static void Add(StoreTransaction transaction, string token, string email, Instant ends, Instant now)
    {
        var links = transaction.Collection(Schema.SignIns);
        links.DeleteMany(Query.LT("ends", Bson.From(now)));
        links.Insert(new BsonDocument { ["_id"] = Fingerprint.Of(token), ["email"] = email, ["ends"] = Bson.From(ends) });
    }

    /// <summary>To whom a link was sent; null when it was used, has run out, or never was. Looking does not use it up.</summary>
    public static string? Look(StoreReader reader, string token, Instant now) => Find(reader.Collection(Schema.SignIns).FindById(Fingerprint.Of(token)), now);

    /// <summary>The same, and it can be used no more.</summary>
    public static string? Take(StoreTransaction transaction, string token, Instant now)
    {
        var links = transaction.Collection(Schema.SignIns);
        var email = Find(links.FindById(Fingerprint.Of(token)), now);
        links.Delete(Fingerprint.Of(token));
        return email;
    }

    private static string? Find(BsonDocument? link, Instant now) => link is not null && Bson.ToInstant(link["ends"]) > now ? link["email"].AsString : null;
}
