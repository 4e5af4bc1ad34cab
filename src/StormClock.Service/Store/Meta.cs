using LiteDB;

namespace StormClock.Service.Store;

/// <summary>Single texts by name: secret keys, a virtual clock, and the like.</summary>
public static class Meta
{
    private const string InstallationKey = "installationId";

    /// <summary>Null when there is none.</summary>
    public static string? Find(StoreReader reader, string key) => reader.Collection(Schema.Meta).FindById(key)?["value"].AsString;

    public static void Put(StoreTransaction transaction, string key, string value) =>
        transaction.Collection(Schema.Meta).Upsert(new BsonDocument { ["_id"] = key, ["value"] = value });

    /// <summary>The text under that name; makes and keeps it when there is none.</summary>
    public static string FindOrMake(StoreTransaction transaction, string key, Func<string> make)
    {
        if (Find(transaction, key) is { } found) return found;
        var made = make();
        Put(transaction, key, made);
        return made;
    }

    /// <summary>Whether a service has ever run on this data folder.</summary>
    public static bool HasInstallationId(StoreReader reader) => Find(reader, InstallationKey) is not null;

    /// <summary>Tells this data folder from all others, for <see cref="Outbox.OutboxIds"/>; made once.</summary>
    public static string InstallationId(StoreTransaction transaction) =>
        FindOrMake(transaction, InstallationKey, () => Guid.NewGuid().ToString("N"));

    /// <summary>Gives a new data folder a name of its own choosing, so that what is made from it is the same every time.</summary>
    public static string NameInstallation(StoreTransaction transaction, string name) => FindOrMake(transaction, InstallationKey, () => name);
}
