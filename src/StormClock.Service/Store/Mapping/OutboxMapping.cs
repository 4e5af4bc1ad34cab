using LiteDB;
using StormClock.Service.Delivery;
using StormClock.Service.Outbox;

namespace StormClock.Service.Store.Mapping;

internal static class OutboxMapping
{
    public static string KeyMarkOf(string key) => Fingerprint.Of(key);

    public static string GardenMarkOf(string gardenId) => Fingerprint.Of(gardenId);

    public static BsonDocument ToBson(OutboxEntry entry) => new()
    {
        ["_id"] = entry.Id,
        ["keyMark"] = KeyMarkOf(entry.Key),
        ["gardenMark"] = GardenMarkOf(entry.GardenId),
        ["key"] = entry.Key,
        ["channel"] = entry.Channel,
        ["garden"] = entry.GardenId,
        ["person"] = entry.PersonId,
        ["reason"] = entry.Reason,
        ["cause"] = entry.Cause,
        ["jobs"] = new BsonArray(entry.JobIds.Select(job => new BsonValue(job))),
        ["message"] = ToBson(entry.Message),
        ["written"] = Bson.From(entry.Written),
        ["moment"] = Bson.From(entry.Moment),
        ["usefulUntil"] = Bson.From(entry.UsefulUntil),
        ["urgent"] = entry.Urgent,
        ["state"] = Bson.From(entry.State),
        ["attempts"] = entry.Attempts,
        ["nextTry"] = Bson.From(entry.NextTry),
        ["settled"] = Bson.From(entry.Settled),
        ["detail"] = Bson.From(entry.Detail),
    };

    public static OutboxEntry FromBson(BsonDocument document) => new(
        document["_id"].AsString,
        document["key"].AsString,
        document["channel"].AsString,
        document["garden"].AsString,
        document["person"].AsString,
        document["reason"].AsString,
        document["cause"].AsString,
        [.. document["jobs"].AsArray.Select(job => job.AsString)],
        MessageFrom(document["message"].AsDocument),
        Bson.ToInstant(document["written"]),
        Bson.ToInstant(document["moment"]),
        Bson.ToInstant(document["usefulUntil"]),
        document["urgent"].AsBoolean,
        Bson.ToEnum<OutboxState>(document["state"]),
        document["attempts"].AsInt32,
        Bson.ToInstant(document["nextTry"]),
        Bson.ToInstantOrNull(document["settled"]),
        Bson.ToTextOrNull(document["detail"]));

    private static BsonDocument ToBson(Outgoing message) => new()
    {
        ["entryId"] = message.EntryId,
        ["messageId"] = message.MessageId,
        ["threadId"] = message.ThreadId,
        ["toName"] = message.ToName,
        ["toAddress"] = message.ToAddress,
        ["subject"] = message.Subject,
        ["text"] = message.Text,
        ["html"] = message.Html,
        ["dated"] = Bson.From(message.Dated),
        ["language"] = message.Language,
    };

    private static Outgoing MessageFrom(BsonDocument document) => new(
        document["entryId"].AsString,
        document["messageId"].AsString,
        document["threadId"].AsString,
        document["toName"].AsString,
        document["toAddress"].AsString,
        document["subject"].AsString,
        document["text"].AsString,
        document["html"].AsString,
        Bson.ToInstant(document["dated"]))
    {
        // A message kept by a version that wrote English alone has none.
        Language = Bson.ToTextOrNull(document["language"]) ?? "en",
    };
}
