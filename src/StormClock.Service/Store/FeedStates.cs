using StormClock.Service.Feeds.Health;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>How each source was doing when it was last written down.</summary>
public static class FeedStates
{
    public static void Put(StoreTransaction transaction, FeedHealth health) => transaction.Collection(Schema.Feeds).Upsert(FeedHealthMapping.ToBson(health));

    public static IReadOnlyList<FeedHealth> All(StoreReader reader) =>
        [.. reader.Collection(Schema.Feeds).FindAll().Select(FeedHealthMapping.FromBson).OrderBy(health => health.Name, StringComparer.Ordinal)];
}
