using LiteDB;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>An advisory as it was heard; what it means is read from the bytes again whenever it is needed.</summary>
/// <param name="Id">The advisory's own id (<see cref="Core.Advisories.Advisory.Id"/>).</param>
/// <param name="Raw">The bytes as they came.</param>
/// <param name="Format">Which reader understands it.</param>
/// <param name="Source">Name of the feed or person it came from.</param>
public sealed record HeardAdvisory(string Id, byte[] Raw, string Format, Instant Issued, Instant HeardAt, string Source);

/// <summary>Everything heard, oldest first.</summary>
public static class Advisories
{
    /// <summary>False when the same id with the same bytes is there already; the first hearing stands.</summary>
    public static bool Add(StoreTransaction transaction, HeardAdvisory heard)
    {
        var collection = transaction.Collection(Schema.Advisories);
        if (collection.FindById(AdvisoryMapping.IdOf(heard)) is not null) return false;
        collection.Insert(AdvisoryMapping.ToBson(heard));
        return true;
    }

    /// <summary>By time heard, then time issued, then id.</summary>
    public static IReadOnlyList<HeardAdvisory> All(StoreReader reader) =>
        [.. reader.Collection(Schema.Advisories).FindAll().Select(AdvisoryMapping.FromBson)
            .OrderBy(heard => heard.HeardAt).ThenBy(heard => heard.Issued).ThenBy(heard => heard.Id, StringComparer.Ordinal)];

    /// <summary>Drops what was heard before the time; returns how many.</summary>
    public static int ForgetHeardBefore(StoreTransaction transaction, Instant time) =>
        transaction.Collection(Schema.Advisories).DeleteMany(Query.LT("heardAt", Bson.From(time)));
}
