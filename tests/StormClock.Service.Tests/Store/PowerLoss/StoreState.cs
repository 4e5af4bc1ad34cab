using System.Security.Cryptography;
using System.Text;
using LiteDB;
using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Tests.Store.PowerLoss;

/// <summary>Everything in a store, for comparing.</summary>
internal static class StoreState
{
    private static readonly string[] Collections =
        [Schema.Advisories, Schema.Standing, Schema.JobStates, Schema.Outbox, Schema.Pressed, Schema.Meta];

    /// <summary>A digest of every document of every collection.</summary>
    public static string Of(StoreReader reader)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var name in Collections)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(name));
            foreach (var document in reader.Collection(name).FindAll().OrderBy(found => found["_id"].AsString, StringComparer.Ordinal))
                hash.AppendData(BsonSerializer.Serialize(document));
        }

        return Convert.ToHexString(hash.GetHashAndReset());
    }

    /// <summary>Whether each index finds exactly the documents it should.</summary>
    public static bool IndexesMatch(StoreReader reader)
    {
        var outbox = reader.Collection(Schema.Outbox);
        var entries = outbox.FindAll().Select(OutboxMapping.FromBson).ToList();
        var jobs = reader.Collection(Schema.JobStates);
        return entries.All(entry => OutboxTable.Find(reader, entry.Id) is not null && OutboxTable.FindByKey(reader, entry.Key)?.Id == entry.Id)
            && Enum.GetValues<OutboxState>().All(state =>
                Same(OutboxTable.InState(reader, state), entries.Where(entry => entry.State == state))
                && OutboxTable.Count(reader, state) == entries.Count(entry => entry.State == state))
            && entries.GroupBy(entry => entry.GardenId).All(garden => Same(OutboxTable.OfGarden(reader, garden.Key), garden))
            && jobs.FindAll().GroupBy(found => (Garden: found["garden"].AsString, Episode: found["episode"].AsString)).All(episode =>
                JobStates.OfEpisode(reader, episode.Key.Garden, episode.Key.Episode).ToHashSet()
                    .SetEquals(episode.Select(JobStateMapping.FromBson)));
    }

    private static bool Same(IEnumerable<OutboxEntry> found, IEnumerable<OutboxEntry> expected) =>
        found.Select(entry => entry.Id).Order(StringComparer.Ordinal).SequenceEqual(expected.Select(entry => entry.Id).Order(StringComparer.Ordinal));
}
