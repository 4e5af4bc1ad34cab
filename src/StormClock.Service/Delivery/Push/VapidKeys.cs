using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Json;

namespace StormClock.Service.Delivery.Push;

/// <summary>
/// The key by which push services know this installation (RFC 8292). Devices subscribe to it, so a new key means that
/// every device must subscribe again.
/// </summary>
public sealed class VapidKeys(ECDsa key) : IDisposable
{
    /// <summary>Less than the 24 h that push services accept (RFC 8292 2), whatever their clock says.</summary>
    private static readonly Duration Life = Duration.FromHours(12);

    private readonly ECDsa key = key;

    /// <summary>The public key, base64url of 65 bytes, as browsers take it.</summary>
    public string PublicKey { get; } = Base64Url.EncodeToString(PushKeys.Bytes(key.ExportParameters(includePrivateParameters: false).Q));

    /// <summary>The Authorization header for one endpoint.</summary>
    /// <param name="contact">Where a push service can complain: mailto: or https:; null for none.</param>
    public string Authorization(Uri endpoint, string? contact, Instant now)
    {
        var claims = new Dictionary<string, object> { ["aud"] = Origin(endpoint), ["exp"] = (now + Life).ToUnixTimeSeconds() };
        if (contact is not null) claims["sub"] = contact;
        var signed = $"{Base64Url.EncodeToString("""{"typ":"JWT","alg":"ES256"}"""u8)}.{Base64Url.EncodeToString(JsonSerializer.SerializeToUtf8Bytes(claims))}";
        var signature = key.SignData(System.Text.Encoding.ASCII.GetBytes(signed), HashAlgorithmName.SHA256);
        return $"vapid t={signed}.{Base64Url.EncodeToString(signature)}, k={PublicKey}";
    }

    /// <summary>Scheme, host and, where it is not the usual one, port (RFC 6454 6.2).</summary>
    private static string Origin(Uri endpoint) =>
        $"{endpoint.Scheme}://{endpoint.IdnHost}{(endpoint.IsDefaultPort ? "" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $":{endpoint.Port}"))}";

    public void Dispose() => key.Dispose();
}
