using LiteDB;

namespace StormClock.Service.Store;

/// <summary>What a garden's calendars say, as JSON that the store does not look into; one text a garden.</summary>
public static class KeptCalendars
{
    /// <summary>Null when the garden has none yet.</summary>
    public static string? Find(StoreReader reader, string gardenId) =>
        reader.Collection(Schema.Calendars).FindById(Fingerprint.Of(gardenId))?["json"].AsString;

    public static void Put(StoreTransaction transaction, string gardenId, string json) =>
        transaction.Collection(Schema.Calendars).Upsert(new BsonDocument { ["_id"] = Fingerprint.Of(gardenId), ["garden"] = gardenId, ["json"] = json });
}
