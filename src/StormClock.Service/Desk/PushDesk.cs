using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Messages;
using StormClock.Service.Store;
using StormClock.Service.Wording;

namespace StormClock.Service.Desk;

/// <summary>A person's page for notifications.</summary>
/// <param name="PublicKey">What a browser subscribes to.</param>
public sealed record PushPage(string GardenName, string PersonName, DateTimeZone Zone, Speech Speech, string PublicKey, IReadOnlyList<PushSubscription> Devices);

/// <summary>How asking for a subscription ended.</summary>
public enum SubscribeResult
{
    Done,

    /// <summary>No keys, or an endpoint that is not on the public Internet.</summary>
    NotUsable,

    TooMany,
}

/// <summary>Takes and drops the devices of people; whoever holds a person's link may do so for that person only.</summary>
/// <param name="allowLoopback">For tests: push services on this machine.</param>
public sealed class PushDesk(StormStore store, GardenShelf shelf, VapidKeys keys, bool allowLoopback)
{
    /// <summary>More than a person has; a link that got into the wrong hands must not fill the disk or the outbox.</summary>
    public const int MostDevices = 8;

    private const int LongestName = 40;

    /// <summary>Null when the garden or the person is no longer in the books.</summary>
    public PushPage? Look(AckToken token) =>
        shelf.Find(token.GardenId) is { } book && book.People.FirstOrDefault(person => person.Id == token.PersonId) is { } person
            ? Page(book, person)
            : null;

    /// <summary>The same device again only renews it.</summary>
    public Task<SubscribeResult> AddAsync(AckToken token, string endpoint, string publicKey, string secret, string deviceName, Instant now)
    {
        if (PublicInternet.Endpoint(endpoint, allowLoopback) is null || PushKeys.Read(publicKey, secret) is not { } shared) return Task.FromResult(SubscribeResult.NotUsable);

        var name = Plain.Cut(deviceName, LongestName);
        var id = Fingerprint.Of("push", token.GardenId, token.PersonId, endpoint);
        return store.WriteAsync(transaction =>
        {
            var others = Of(Subscriptions.OfGarden(transaction, token.GardenId), token.PersonId).Count(device => device.Id != id);
            if (others >= MostDevices) return SubscribeResult.TooMany;
            Subscriptions.Put(transaction, new(id, token.GardenId, token.PersonId, name, endpoint, shared, now));
            return SubscribeResult.Done;
        });
    }

    /// <summary>A device that is not (or no longer) this person's is left alone.</summary>
    public Task RemoveAsync(AckToken token, string id) => store.WriteAsync(transaction =>
    {
        if (Of(Subscriptions.OfGarden(transaction, token.GardenId), token.PersonId).Any(device => device.Id == id)) Subscriptions.Remove(transaction, id);
    });

    private PushPage Page(GardenBook book, Person person) => new(
        book.Name, person.Name, book.Zone, Speech.Of(person, book.Units), keys.PublicKey, [.. Of(store.Read(reader => Subscriptions.OfGarden(reader, book.Id)), person.Id)]);

    private static IEnumerable<PushSubscription> Of(IReadOnlyList<PushSubscription> devices, string personId) =>
        devices.Where(device => device.PersonId == personId);
}
