using LiteDB;

namespace StormClock.Service.Store;

/// <summary>What a function given to <see cref="StormStore.Read"/> may see; of no use after the function has returned.</summary>
public class StoreReader
{
    private LiteDatabase? database;

    internal StoreReader(LiteDatabase database) => this.database = database;

    internal ILiteCollection<BsonDocument> Collection(string name) =>
        (database ?? throw new InvalidOperationException("A reader or transaction was used after its function had returned.")).GetCollection(name);

    /// <summary>Reads every entry of every collection; how many there are.</summary>
    internal int ReadAll() =>
        (database ?? throw new InvalidOperationException("A reader or transaction was used after its function had returned.")).GetCollectionNames().ToList().Sum(name => Collection(name).FindAll().Count());

    internal void End() => database = null;
}

/// <summary>
/// What a function given to <see cref="StormStore.WriteAsync{T}"/> may see and change; all of it is kept or nothing. An
/// exception thrown by a store function has ended the transaction, so it must not be caught inside.
/// </summary>
public sealed class StoreTransaction : StoreReader
{
    internal StoreTransaction(LiteDatabase database)
        : base(database)
    {
    }
}
