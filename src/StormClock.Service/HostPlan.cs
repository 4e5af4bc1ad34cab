using StormClock.Core.Reminders;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Replies;
using StormClock.Service.Settings;

namespace StormClock.Service;

/// <summary>What a host is built from: the same for the real service and for a rehearsal, which differ only in these values.</summary>
/// <param name="DataFolder">Holds the database and keys.</param>
/// <param name="Listen">Address of the pages; port 0 lets the system choose.</param>
/// <param name="PagesAddress">Where phones reach the pages; null when they cannot, then messages carry no links.</param>
/// <param name="ListenEvery">How often the feeds are looked at.</param>
/// <param name="FirstListen">When the first look is taken.</param>
/// <param name="LinksPerMinute">Requests a minute that one address may make on link pages.</param>
/// <param name="Practice">A rehearsal: exercise alerts count, and nothing is logged but the rehearsal's own log.</param>
internal sealed record HostPlan(
    string DataFolder,
    GardenShelf Gardens,
    Func<IClock, IReadOnlyList<IFeed>> Feeds,
    IChannel Channel,
    TimeProvider Time,
    Uri Listen,
    Uri? PagesAddress,
    Duration ListenEvery,
    Instant FirstListen,
    int LinksPerMinute,
    bool Practice)
{
    /// <summary>Hours in which only urgent messages go out; null for none.</summary>
    public QuietHours? Quiet { get; init; }

    /// <summary>An address outside that is asked as a sign of life; null for none.</summary>
    public HeartbeatSettings? SignOfLife { get; init; }

    /// <summary>Nobody but this box itself can open the front page, and this is no rehearsal.</summary>
    public bool MaySendTests => PagesAddress is null && Listen.IsLoopback && !Practice;

    /// <summary>Where the files of the installation are; null where there are none, as in a rehearsal.</summary>
    public string? ConfigFolder { get; init; }

    /// <summary>Sends notifications to subscribed devices; null for none.</summary>
    public PushPlan? Push { get; init; }

    /// <summary>Takes answers by mail; null for none.</summary>
    public ReplyPlan? Replies { get; init; }

    /// <summary>Where whose messages are posted too, by <c>garden/person</c>.</summary>
    public IReadOnlyDictionary<string, WebhookTarget> Webhooks { get; init; } = new Dictionary<string, WebhookTarget>();
}

/// <param name="Contact">Where a push service can complain: mailto: or https:; null for none.</param>
/// <param name="AllowLoopback">For tests: push services on this machine.</param>
internal sealed record PushPlan(string? Contact, bool AllowLoopback = false);
