using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>What stands for one garden between two decisions, as JSON that the store does not look into.</summary>
/// <param name="Revision">Counts the saves; 0 for a garden that has none yet.</param>
public sealed record StandingText(string GardenId, string Json, long Revision);

/// <summary>One standing per garden.</summary>
public static class Standings
{
    /// <summary>Null when the garden has none yet.</summary>
    public static StandingText? Find(StoreReader reader, string gardenId) =>
        reader.Collection(Schema.Standing).FindById(StandingMapping.IdOf(gardenId)) is { } found ? StandingMapping.FromBson(found) : null;

    /// <summary>
    /// Saves under the next revision, given the revision that was read (0 for none). False, and nothing changed, when
    /// somebody has saved since: decide again on what stands now. Call it first in the transaction.
    /// </summary>
    public static bool TrySave(StoreTransaction transaction, string gardenId, string json, long revisionRead)
    {
        var stands = Find(transaction, gardenId)?.Revision ?? 0;
        if (stands != revisionRead) return false;
        transaction.Collection(Schema.Standing).Upsert(StandingMapping.ToBson(new StandingText(gardenId, json, stands + 1)));
        return true;
    }
}
