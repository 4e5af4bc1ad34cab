using LiteDB;

namespace StormClock.Service.Store;

/// <summary>How far a mailbox has been read.</summary>
/// <param name="Validity">The mailbox's own word for whether its numbers are still the same (RFC 9051 section 2.3.1.1).</param>
/// <param name="LastUid">Everything up to this number has been settled.</param>
/// <param name="Unmarked">Settled mails that the mailbox has not been told of yet.</param>
public sealed record MailboxState(uint Validity, uint LastUid, IReadOnlyList<uint> Unmarked);

public static class MailboxStates
{
    /// <summary>Null when the mailbox has never been read.</summary>
    public static MailboxState? Find(StoreReader reader, string mailbox) => reader.Collection(Schema.Mailboxes).FindById(Fingerprint.Of(mailbox)) is { } found
        ? new((uint)found["validity"].AsInt64, (uint)found["lastUid"].AsInt64, [.. found["unmarked"].AsArray.Select(uid => (uint)uid.AsInt64)])
        : null;

    public static void Put(StoreTransaction transaction, string mailbox, MailboxState state) => transaction.Collection(Schema.Mailboxes).Upsert(new BsonDocument
    {
        ["_id"] = Fingerprint.Of(mailbox),
        ["validity"] = (long)state.Validity,
        ["lastUid"] = (long)state.LastUid,
        ["unmarked"] = new BsonArray(state.Unmarked.Select(uid => new BsonValue((long)uid))),
    });
}
