using System.Security.Cryptography;
using Microsoft.AspNetCore.WebUtilities;
using StormClock.Service.Store;

namespace StormClock.Service.Visits;

/// <summary>Makes, knows and takes back the keys by which other programs ask in a visitor's name.</summary>
public sealed class KeyDesk(StormStore store, PasscodeFile passcode, ILogger<KeyDesk> log)
{
    /// <summary>Of one visitor (C): one for each program, and few enough to know them all.</summary>
    public const int Most = 10;

    /// <summary>Characters of a name.</summary>
    public const int LongestName = 60;

    /// <summary>Begins every key, so that whoever finds one lying about knows what it is.</summary>
    private const string Beginning = "stormclock_";

    /// <summary>Whoever is signed in. Sitting at the box is no name to give a key in.</summary>
    public static bool MayHold(Visitor visitor) => visitor.Kind is VisitorKind.Mail or VisitorKind.Passcode;

    /// <summary>The keys of one visitor that still hold, oldest first.</summary>
    public IReadOnlyList<ApiKey> Of(Visitor owner) => store.Read(reader => Of(reader, owner, passcode.Mark));

    /// <summary>The new key, which is kept nowhere; null when there are as many as there may be.</summary>
    /// <param name="owner">Who may hold one.</param>
    /// <param name="name">What it is for; not empty, at most <see cref="LongestName"/> characters.</param>
    public Task<string?> MakeAsync(Visitor owner, string name, Instant now)
    {
        var mark = passcode.Mark;
        return store.WriteAsync(transaction =>
        {
            foreach (var dead in ApiKeys.All(transaction).Where(key => !key.HoldsUnder(mark))) ApiKeys.Drop(transaction, dead.Id);
            if (Of(transaction, owner, mark).Count >= Most) return null;
            var key = Beginning + WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(32));
            ApiKeys.Put(transaction, new(Fingerprint.Of(key), name, owner, now, null) { PasscodeMark = owner.Kind == VisitorKind.Passcode ? mark : null });
            return key;
        });
    }

    /// <summary>Does nothing to a key of somebody else.</summary>
    public Task TakeBackAsync(Visitor owner, string id) => store.WriteAsync(transaction =>
    {
        if (ApiKeys.Find(transaction, id) is { } key && IsOf(key, owner)) ApiKeys.Drop(transaction, id);
    });

    /// <summary>In whose name a key asks; null when it is none of ours (any more).</summary>
    public async Task<Visitor?> VisitorAsync(string key, Instant now)
    {
        if (store.Read(reader => ApiKeys.Find(reader, Fingerprint.Of(key))) is not { } known || !known.HoldsUnder(passcode.Mark)) return null;
        if (known.LastUsed != now.InUtc().Date) await NoteUseAsync(known.Id, now.InUtc().Date);
        return known.Owner;
    }

    /// <summary>Once a day. That it cannot be kept must not keep anybody from reading the plan.</summary>
    private async Task NoteUseAsync(string id, LocalDate today)
    {
        try
        {
            await store.WriteAsync(transaction =>
            {
                if (ApiKeys.Find(transaction, id) is { } key) ApiKeys.Put(transaction, key with { LastUsed = today });
            });
        }
        catch (StoreUnavailableException trouble)
        {
            log.LogWarning(trouble, "The use of a key was not kept");
        }
    }

    private static List<ApiKey> Of(StoreReader reader, Visitor owner, string? mark) =>
        [.. ApiKeys.All(reader).Where(key => IsOf(key, owner) && key.HoldsUnder(mark))];

    private static bool IsOf(ApiKey key, Visitor visitor) =>
        key.Owner.Kind == visitor.Kind && string.Equals(key.Owner.Email, visitor.Email, StringComparison.OrdinalIgnoreCase);
}
