using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Store;

namespace StormClock.Service.Desk;

/// <summary>Who is told how, beside mail: devices subscribed by now, and the webhooks of the settings.</summary>
/// <param name="takesPush">False where this installation sends no notifications; subscriptions then rest.</param>
/// <param name="webhooks">People with a webhook, as <c>garden/person</c>.</param>
public sealed class PeopleReach(StormStore store, bool takesPush, IReadOnlyCollection<string> webhooks)
{
    public Reach Of(GardenBook book)
    {
        var devices = takesPush ? store.Read(reader => Subscriptions.OfGarden(reader, book.Id)) : [];
        return new(book.People.ToDictionary(person => person.Id, person => Besides(book, person, devices)));
    }

    private IReadOnlyList<string> Besides(GardenBook book, Person person, IReadOnlyList<PushSubscription> devices) =>
    [
        .. devices.Where(device => device.PersonId == person.Id).Select(device => ChannelNames.Join(PushChannel.ChannelName, device.Id)),
        .. webhooks.Contains($"{book.Id}/{person.Id}") ? (string[])[WebhookChannel.ChannelName] : [],
    ];
}
