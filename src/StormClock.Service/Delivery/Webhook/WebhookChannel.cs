using System.Globalization;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;

namespace StormClock.Service.Delivery.Webhook;

/// <summary>Where one person's messages are posted, and the secret that signs them.</summary>
public sealed record WebhookTarget(Uri Url, ReadOnlyMemory<byte> Secret)
{
    /// <summary>The path may be a secret of the gateway's, so only the host is shown.</summary>
    public override string ToString() => Url.Host;
}

/// <summary>
/// Posts each message as JSON to a gateway of the keeper's own, signed so that the gateway can tell it from a forgery:
/// <c>StormClock-Signature: v1=</c> and the HMAC-SHA256 in hex of the timestamp, a dot and the body.
/// </summary>
/// <param name="targets">By <c>garden/person</c>.</param>
public sealed class WebhookChannel(IReadOnlyDictionary<string, WebhookTarget> targets, HttpClient client, IClock clock) : IChannel
{
    public const string ChannelName = "webhook";

    /// <summary>Seconds since 1970 at which this try was made; a gateway refuses old ones, so that none can be played again.</summary>
    public const string TimestampHeader = "StormClock-Timestamp";

    public const string SignatureHeader = "StormClock-Signature";

    /// <summary>The same on every try of a message.</summary>
    public const string MessageHeader = "StormClock-Message";

    public string Name => ChannelName;

    /// <summary>The message's address is <c>garden/person</c>, its text the body.</summary>
    public async Task<DeliveryOutcome> SendAsync(Outgoing message, CancellationToken cancellation)
    {
        if (!targets.TryGetValue(message.ToAddress, out var target)) return new(DeliveryResult.Refused, $"the settings have no webhook for {message.ToAddress}");

        var timestamp = clock.GetCurrentInstant().ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);
        var body = Encoding.UTF8.GetBytes(message.Text);
        using var request = new HttpRequestMessage(HttpMethod.Post, target.Url) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json", "utf-8");
        request.Headers.Add(TimestampHeader, timestamp);
        request.Headers.Add(SignatureHeader, Signature(target.Secret.Span, timestamp, body));
        request.Headers.Add(MessageHeader, message.EntryId);
        return (await HttpAnswers.PostAsync(client, request, clock, cancellation)).Outcome;
    }

    private static string Signature(ReadOnlySpan<byte> secret, string timestamp, byte[] body) =>
        $"v1={Convert.ToHexStringLower(HMACSHA256.HashData(secret, [.. Encoding.ASCII.GetBytes(timestamp), (byte)'.', .. body]))}";
}
