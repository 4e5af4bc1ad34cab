using LiteDB;

namespace StormClock.Service.Store;

/// <summary>The plan in force of each garden, as JSON that the store does not look into.</summary>
public static class KeptPlans
{
    /// <summary>Null when the garden has none yet.</summary>
    public static string? Find(StoreReader reader, string gardenId) =>
        reader.Collection(Schema.Plans).FindById(Fingerprint.Of(gardenId))?["json"].AsString;

    public static void Put(StoreTransaction transaction, string gardenId, string json) =>
        transaction.Collection(Schema.Plans).Upsert(new BsonDocument { ["_id"] = Fingerprint.Of(gardenId), ["garden"] = gardenId, ["json"] = json });
}
