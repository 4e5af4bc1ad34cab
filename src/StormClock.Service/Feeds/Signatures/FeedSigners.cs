using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StormClock.Core;

namespace StormClock.Service.Feeds.Signatures;

/// <summary>Who signs the alerts of one source: the certificates of its <c>signed_by</c> file.</summary>
public sealed class FeedSigners(IReadOnlyList<X509Certificate2> certificates)
{
    /// <summary>Why a message must not be believed; null when it is signed as it must be.</summary>
    public string? FaultOf(ReadOnlyMemory<byte> message) => AlertSignature.FaultOf(message, certificates);

    /// <summary>Whether a message carries a signature, checked or not.</summary>
    public static bool IsSigned(ReadOnlySpan<byte> message) => AlertSignature.IsIn(message);

    /// <summary>The certificates of a PEM file; a fault when there are none that could check a signature.</summary>
    public static ReadResult<FeedSigners> Load(string pemFile)
    {
        try
        {
            var found = new X509Certificate2Collection();
            found.ImportFromPemFile(pemFile);
            var fit = found.Where(certificate => certificate.GetRSAPublicKey() is not null).ToList();
            return fit.Count > 0
                ? new FeedSigners(fit)
                : new ReadFault("signed_by", $"{pemFile} holds no certificate with an RSA key; get the issuer's certificate as PEM");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or CryptographicException)
        {
            return new ReadFault("signed_by", $"{pemFile} cannot be read as a PEM certificate: {fault.Message}");
        }
    }
}
