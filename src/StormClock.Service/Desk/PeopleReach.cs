using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Store;

namespace StormClock.Service.Desk;

/// <summary>Who is told how, beside mail: devices subscribed by now, and the webhooks of the settings; and who gets the weekly line.</summary>
/// <param name="takesPush">False where this installation sends no notifications; subscriptions then rest.</param>
/// <param name="webhooks">People with a webhook, as <c>garden/person</c>.</param>
/// <param name="canAnswer">Messages carry a way to answer them.</param>
/// <param name="listening">The books whose keepers are told weekly that the box listens; null where nobody is.</param>
public sealed class PeopleReach(StormStore store, bool takesPush, IReadOnlyCollection<string> webhooks, bool canAnswer = true, GardenShelf? listening = null)
{
    public Reach Of(GardenBook book)
    {
        var devices = takesPush ? store.Read(reader => Subscriptions.OfGarden(reader, book.Id)) : [];
        return new(book.People.ToDictionary(person => person.Id, person => Besides(book, person, devices))) { CanAnswer = canAnswer, Weekly = Weekly(book) };
    }

    /// <summary>The keepers of a book, but for those who are told for another book before it: one box, one line.</summary>
    private HashSet<string> Weekly(GardenBook book)
    {
        var told = (listening?.Books ?? []).TakeWhile(other => other.Id != book.Id).SelectMany(Keepers).Select(keeper => keeper.Email).ToHashSet();
        return listening is null ? [] : [.. Keepers(book).Where(keeper => !told.Contains(keeper.Email)).Select(keeper => keeper.Id)];
    }

    private static IEnumerable<Person> Keepers(GardenBook book) => book.People.Where(person => person is { Role: PersonRole.Keeper, Email: not null });

    private IReadOnlyList<string> Besides(GardenBook book, Person person, IReadOnlyList<PushSubscription> devices) =>
    [
        .. devices.Where(device => device.PersonId == person.Id).Select(device => ChannelNames.Join(PushChannel.ChannelName, device.Id)),
        .. webhooks.Contains($"{book.Id}/{person.Id}") ? (string[])[WebhookChannel.ChannelName] : [],
    ];
}
