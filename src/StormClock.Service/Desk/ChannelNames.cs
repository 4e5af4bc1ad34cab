using StormClock.Core.Reminders;
using StormClock.Service.Delivery.Push;

namespace StormClock.Service.Desk;

/// <summary>The channel part of a reminder key: a channel, and after a colon the one device it reaches where there may be several.</summary>
internal static class ChannelNames
{
    public static string Join(string channel, string to) => $"{channel}:{to}";

    public static string Words(string channel) => channel switch
    {
        Reach.Mail => "mail",
        PushChannel.ChannelName => "notifications",
        _ => channel,
    };

    public static (string Channel, string To) Split(string name) =>
        name.Split(':', 2) is [var channel, var to] ? (channel, to) : (name, "");
}
