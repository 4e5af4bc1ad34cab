using LiteDB;
using StormClock.Service.Delivery.Push;

namespace StormClock.Service.Store.Mapping;

internal static class SubscriptionMapping
{
    public static string MarkOf(string text) => Fingerprint.Of(text);

    public static BsonDocument ToBson(PushSubscription device) => new()
    {
        ["_id"] = device.Id,
        ["gardenMark"] = MarkOf(device.GardenId),
        ["endpointMark"] = MarkOf(device.Endpoint),
        ["garden"] = device.GardenId,
        ["person"] = device.PersonId,
        ["device"] = device.DeviceName,
        ["endpoint"] = device.Endpoint,
        ["publicKey"] = device.Keys.PublicKey,
        ["secret"] = device.Keys.Secret,
        ["added"] = Bson.From(device.Added),
    };

    public static PushSubscription FromBson(BsonDocument document) => new(
        document["_id"].AsString,
        document["garden"].AsString,
        document["person"].AsString,
        document["device"].AsString,
        document["endpoint"].AsString,
        new(document["publicKey"].AsString, document["secret"].AsString),
        Bson.ToInstant(document["added"]));
}
