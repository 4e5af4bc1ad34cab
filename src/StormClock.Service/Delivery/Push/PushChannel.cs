using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using StormClock.Service.Store;

namespace StormClock.Service.Delivery.Push;

/// <summary>Notifications to the browser of a phone or computer (RFC 8030), one outbox entry a device.</summary>
/// <param name="contact">Where a push service can complain: mailto: or https:; null for none.</param>
public sealed class PushChannel(StormStore store, VapidKeys keys, string? contact, HttpClient client, bool allowLoopback, IClock clock) : IChannel
{
    public const string ChannelName = "push";

    /// <summary>Four weeks: no push service keeps anything longer.</summary>
    private static readonly Duration LongestKept = Duration.FromDays(28);

    public string Name => ChannelName;

    /// <summary>The message's address is the id of a <see cref="PushSubscription"/>, its text the payload.</summary>
    public async Task<DeliveryOutcome> SendAsync(Outgoing message, CancellationToken cancellation)
    {
        if (store.Read(reader => Subscriptions.Find(reader, message.ToAddress)) is not { } device)
            return new(DeliveryResult.Refused, "this device is no longer subscribed");
        if (PublicInternet.Endpoint(device.Endpoint, allowLoopback) is not { } endpoint)
            return new(DeliveryResult.Refused, "the device's push service is not on the public Internet");

        using var request = Request(message, device, endpoint);
        var (outcome, status) = await HttpAnswers.PostAsync(client, request, clock, cancellation);
        if (status is not (HttpStatusCode.NotFound or HttpStatusCode.Gone)) return outcome;

        await store.WriteAsync(transaction => Subscriptions.RemoveEndpoint(transaction, device.Endpoint), CancellationToken.None);
        return outcome with { Detail = $"{outcome.Detail}: the subscription of this device has ended and was deleted" };
    }

    private HttpRequestMessage Request(Outgoing message, PushSubscription device, Uri endpoint)
    {
        var now = clock.GetCurrentInstant();
        var request = new HttpRequestMessage(HttpMethod.Post, endpoint)
        {
            Content = new ByteArrayContent(PushEncryption.Encrypt(Encoding.UTF8.GetBytes(message.Text), device.Keys)),
        };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        request.Content.Headers.ContentEncoding.Add("aes128gcm");
        request.Headers.TryAddWithoutValidation("Authorization", keys.Authorization(endpoint, contact, now));
        request.Headers.TryAddWithoutValidation("TTL", Kept(message, now).ToString(CultureInfo.InvariantCulture));
        request.Headers.TryAddWithoutValidation("Urgency", message.Urgent ? "high" : "normal");

        // A second try takes the place of the first one where that still waits (RFC 8030 5.4); ids are 32 hex digits.
        request.Headers.TryAddWithoutValidation("Topic", message.EntryId);
        return request;
    }

    /// <summary>Whole seconds until the message is of no more use; 0 means now or never.</summary>
    private static long Kept(Outgoing message, Instant now)
    {
        var left = message.UsefulUntil is { } until ? until - now : Duration.Zero;
        return (long)Duration.Max(Duration.Min(left, LongestKept), Duration.Zero).TotalSeconds;
    }
}
