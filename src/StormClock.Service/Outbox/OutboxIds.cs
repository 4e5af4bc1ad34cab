using StormClock.Core.Reminders;
using StormClock.Service.Store;

namespace StormClock.Service.Outbox;

/// <summary>The fixed names of one message: the same reminder key in the same data folder always gives the same.</summary>
/// <param name="EntryId">Id of the outbox entry.</param>
/// <param name="MessageId">Message-ID without angle brackets; that of a mail to be answered also carries a <see cref="Core.Acknowledgements.ReplyProof"/>.</param>
/// <param name="ThreadId">The same for all messages of one episode of one garden to one person; written like a Message-ID.</param>
public sealed record OutboxIds(string EntryId, string MessageId, string ThreadId)
{
    /// <summary>A domain that can belong to nobody (RFC 2606), so that no name is borrowed.</summary>
    private const string Domain = "stormclock.invalid";

    /// <param name="installationId"><see cref="Meta.InstallationId"/>: keeps two installations with like-named gardens apart in one mailbox.</param>
    public static OutboxIds For(ReminderKey key, string installationId)
    {
        var entry = Fingerprint.Of(
            "entry", installationId, key.GardenId, key.EpisodeId, key.PersonId, key.Reason.ToString(), key.Occasion, key.Channel);
        var thread = Fingerprint.Of("thread", installationId, key.GardenId, key.EpisodeId, key.PersonId);
        return new OutboxIds(entry, Named(entry), Named(thread));
    }

    /// <summary>A name of ours in the form of a mail address, at which nobody can be reached.</summary>
    public static string Named(string word) => $"{word}@{Domain}";

    /// <summary>Whether a list of names may hold one of ours.</summary>
    public static bool MayName(string names) => names.Contains("@" + Domain, StringComparison.OrdinalIgnoreCase);

    /// <summary>What <see cref="Named"/> was given; null for a name that is not ours.</summary>
    public static string? WordOf(string name) => name.EndsWith("@" + Domain, StringComparison.OrdinalIgnoreCase) ? name[..^(Domain.Length + 1)] : null;
}
