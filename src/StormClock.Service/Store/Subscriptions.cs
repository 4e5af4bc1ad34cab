using LiteDB;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>The devices that take notifications.</summary>
public static class Subscriptions
{
    public static PushSubscription? Find(StoreReader reader, string id) =>
        reader.Collection(Schema.Subscriptions).FindById(id) is { } found ? SubscriptionMapping.FromBson(found) : null;

    /// <summary>Oldest first.</summary>
    public static IReadOnlyList<PushSubscription> OfGarden(StoreReader reader, string gardenId) =>
        [.. reader.Collection(Schema.Subscriptions).Find(Query.EQ("gardenMark", SubscriptionMapping.MarkOf(gardenId)))
            .Select(SubscriptionMapping.FromBson).OrderBy(device => device.Added).ThenBy(device => device.Id, StringComparer.Ordinal)];

    /// <summary>Replaces what was known of that device of that person.</summary>
    public static void Put(StoreTransaction transaction, PushSubscription device) =>
        transaction.Collection(Schema.Subscriptions).Upsert(SubscriptionMapping.ToBson(device));

    public static void Remove(StoreTransaction transaction, string id) => transaction.Collection(Schema.Subscriptions).Delete(id);

    /// <summary>Removes a device for everybody who subscribed it; the push service knows it no more.</summary>
    public static void RemoveEndpoint(StoreTransaction transaction, string endpoint) =>
        transaction.Collection(Schema.Subscriptions).DeleteMany(Query.EQ("endpointMark", SubscriptionMapping.MarkOf(endpoint)));
}
