using System.Collections.Concurrent;
using System.Security.Cryptography;
using Microsoft.AspNetCore.WebUtilities;
using StormClock.Core.Garden;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Store;
using StormClock.Service.Wakeups;
using StormClock.Service.Wording;

namespace StormClock.Service.Visits;

/// <summary>Lets people in: by a link sent to an address that stands in a book, or by the passcode. Ends visits.</summary>
/// <param name="pages">What links begin with.</param>
public sealed class SignInDesk(StormStore store, GardenShelf shelf, PasscodeFile passcode, IChannel mail, Turns turns, Uri pages, ILogger<SignInDesk> log)
{
    /// <summary>How long a link can be used (C): long enough for slow mail, short enough for a mail that lies about.</summary>
    public static readonly Duration LinkLife = Duration.FromMinutes(20);

    /// <summary>How long a device stays signed in (C): over a storm and its rechecks.</summary>
    public static readonly Duration VisitLife = Duration.FromDays(40);

    /// <summary>Letters to one address within <see cref="LinkLife"/> (C), so that nobody's mailbox can be filled from here.</summary>
    private const int MostLetters = 3;

    private readonly ConcurrentDictionary<string, List<Instant>> asked = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Sends a link if the address stands in a book. The caller hears nothing of that: whoever tries addresses learns none. The letter is
    /// on its way when this returns, not delivered, so that waiting tells nothing either.
    /// </summary>
    public void Ask(string email, Instant now)
    {
        var known = shelf.Books.SelectMany(book => book.People.Select(person => (book, person)))
            .FirstOrDefault(pair => string.Equals(pair.person.Email, email.Trim(), StringComparison.OrdinalIgnoreCase));
        if (known.person is null || !MaySend(known.person.Email!, now)) return;

        _ = SendAsync(known.person, known.book.Units, now);
    }

    /// <summary>To whom a link was sent; null when it opens nothing (any more).</summary>
    public string? Look(string token, Instant now) => store.Read(reader => SignIns.Look(reader, token, now));

    /// <summary>Uses a link up; null when it opens nothing.</summary>
    public Task<Visit?> EnterAsync(string token, Instant now) => store.WriteAsync(transaction =>
        SignIns.Take(transaction, token, now) is { } email ? Begin(transaction, new(VisitorKind.Mail, email), now) : null);

    /// <summary>Null when the passcode is another one.</summary>
    public async Task<Visit?> EnterByPasscodeAsync(string given, Instant now) =>
        passcode.Matches(given) ? await store.WriteAsync(transaction => Begin(transaction, new(VisitorKind.Passcode), now, passcode.Mark)) : null;

    /// <summary>Who is signed in under that id; null when the visit has ended, or the passcode it began by is no longer the one.</summary>
    public Visitor? Visitor(string visitId, Instant now) =>
        store.Read(reader => OpenVisits.Find(reader, visitId, now)) is { } visit && (visit.PasscodeMark is null || visit.PasscodeMark == passcode.Mark) ? visit.Visitor : null;

    public Task LeaveAsync(string visitId) => store.WriteAsync(transaction => OpenVisits.End(transaction, visitId));

    private static Visit Begin(StoreTransaction transaction, Visitor visitor, Instant now, string? passcodeMark = null)
    {
        var visit = new Visit(Secret(), visitor, now, now + VisitLife) { PasscodeMark = passcodeMark };
        OpenVisits.Put(transaction, visit, now);
        return visit;
    }

    private static string Secret() => WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(32));

    private bool MaySend(string email, Instant now)
    {
        var times = asked.GetOrAdd(email, _ => []);
        lock (times)
        {
            times.RemoveAll(time => now - time > LinkLife);
            if (times.Count >= MostLetters) return false;
            times.Add(now);
            return true;
        }
    }

    private async Task SendAsync(Person person, UnitSystem units, Instant now)
    {
        try
        {
            var token = Secret();
            await store.WriteAsync(transaction => SignIns.Add(transaction, token, person.Email!, now + LinkLife, now));
            var letter = SignInLetter.To(person, units, new Uri(pages, $"in/{token}"), now);
            var outcome = await turns.BetweenAsync(
                async () =>
                {
                    var sent = await mail.SendAsync(letter, CancellationToken.None);
                    await mail.RestAsync();
                    return sent;
                },
                CancellationToken.None);
            if (outcome.Result != DeliveryResult.Delivered) log.LogWarning("A sign-in link for {Person} was not delivered: {Detail}", person.Id, outcome.Detail);
        }
        catch (Exception trouble) when (trouble is IOException or InvalidOperationException)
        {
            log.LogWarning(trouble, "A sign-in link for {Person} was not sent", person.Id);
        }
    }
}
