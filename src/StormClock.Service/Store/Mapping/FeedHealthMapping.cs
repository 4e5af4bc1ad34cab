using LiteDB;
using StormClock.Service.Feeds.Health;

namespace StormClock.Service.Store.Mapping;

internal static class FeedHealthMapping
{
    public static BsonDocument ToBson(FeedHealth health) => new()
    {
        ["_id"] = Fingerprint.Of(health.Name),
        ["name"] = health.Name,
        ["firstAsked"] = Bson.From(health.FirstAsked),
        ["lastGood"] = Bson.From(health.LastGood),
        ["lastChange"] = Bson.From(health.LastChange),
        ["newestIssued"] = Bson.From(health.NewestIssued),
        ["contentMark"] = Bson.From(health.ContentMark),
        ["lastError"] = Bson.From(health.LastError),
        ["lastErrorAt"] = Bson.From(health.LastErrorAt),
        ["failures"] = health.Failures,
        ["spellSince"] = Bson.From(health.LastSpell?.Since),
        ["spellAgain"] = Bson.From(health.LastSpell?.Again),
    };

    public static FeedHealth FromBson(BsonDocument document) => new(document["name"].AsString, Bson.ToInstant(document["firstAsked"]))
    {
        LastGood = Bson.ToInstantOrNull(document["lastGood"]),
        LastChange = Bson.ToInstantOrNull(document["lastChange"]),
        NewestIssued = Bson.ToInstantOrNull(document["newestIssued"]),
        ContentMark = Bson.ToTextOrNull(document["contentMark"]),
        LastError = Bson.ToTextOrNull(document["lastError"]),
        LastErrorAt = Bson.ToInstantOrNull(document["lastErrorAt"]),
        Failures = document["failures"].AsInt32,
        LastSpell = Bson.ToInstantOrNull(document["spellSince"]) is { } since && Bson.ToInstantOrNull(document["spellAgain"]) is { } again ? new(since, again) : null,
    };
}
