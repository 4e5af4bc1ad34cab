using LiteDB;
using StormClock.Service.Store.Mapping;
using StormClock.Service.Visits;

namespace StormClock.Service.Store;

/// <summary>Somebody who is signed in on one device.</summary>
/// <param name="Id">Random; the device holds it, signed, in its cookie.</param>
/// <param name="Ends">After this it holds no longer.</param>
public sealed record Visit(string Id, Visitor Visitor, Instant Began, Instant Ends)
{
    /// <summary>Tells the passcode it began by from others (<see cref="PasscodeFile.Mark"/>); null where it began by a link.</summary>
    public string? PasscodeMark { get; init; }
}

/// <summary>Who is signed in. Kept here, so that signing out ends a visit even for whoever copied its cookie.</summary>
public static class OpenVisits
{
    /// <summary>Null when it has ended.</summary>
    public static Visit? Find(StoreReader reader, string id, Instant now) =>
        reader.Collection(Schema.Visits).FindById(id) is { } found && FromBson(found) is var visit && visit.Ends > now ? visit : null;

    /// <summary>Also drops those that have run out.</summary>
    public static void Put(StoreTransaction transaction, Visit visit, Instant now)
    {
        var visits = transaction.Collection(Schema.Visits);
        visits.DeleteMany(Query.LT("ends", Bson.From(now)));
        visits.Upsert(new BsonDocument
        {
            ["_id"] = visit.Id,
            ["kind"] = visit.Visitor.Kind.ToString(),
            ["email"] = visit.Visitor.Email,
            ["passcode"] = visit.PasscodeMark,
            ["began"] = Bson.From(visit.Began),
            ["ends"] = Bson.From(visit.Ends),
        });
    }

    public static void End(StoreTransaction transaction, string id) => transaction.Collection(Schema.Visits).Delete(id);

    private static Visit FromBson(BsonDocument document) => new(
        document["_id"].AsString, new(Enum.Parse<VisitorKind>(document["kind"].AsString), document["email"].AsString), Bson.ToInstant(document["began"]), Bson.ToInstant(document["ends"]))
    {
        PasscodeMark = Bson.ToTextOrNull(document["passcode"]),
    };
}
