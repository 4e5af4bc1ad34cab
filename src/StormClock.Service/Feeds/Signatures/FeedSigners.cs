using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StormClock.Core;
using StormClock.Service.Settings;

namespace StormClock.Service.Feeds.Signatures;

/// <summary>Who signs the alerts of one source: the certificates of its <c>signed_by</c> file.</summary>
public sealed class FeedSigners(IReadOnlyList<X509Certificate2> certificates)
{
    /// <summary>Why a message must not be believed; null when it is signed as it must be.</summary>
    public string? FaultOf(ReadOnlyMemory<byte> message) => AlertSignature.FaultOf(message, certificates);

    /// <summary>Whether a message carries a signature, checked or not.</summary>
    public static bool IsSigned(ReadOnlySpan<byte> message) => AlertSignature.IsIn(message);

    /// <summary>The certificates of a PEM file; a fault when there are none that could check a signature.</summary>
    public static ReadResult<FeedSigners> Load(SignerFile file)
    {
        try
        {
            var found = new X509Certificate2Collection();
            found.ImportFromPemFile(file.Path);
            var fit = found.Where(certificate => certificate.GetRSAPublicKey() is not null).ToList();
            return fit.Count > 0
                ? new FeedSigners(fit)
                : Fault("holds no certificate with an RSA key; get the issuer's certificate as PEM");
        }
        catch (Exception trouble) when (trouble is FileNotFoundException or DirectoryNotFoundException)
        {
            return Fault("is not there; put the issuer's certificate (PEM) there, or mend the path");
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Fault("may not be read by this user; mend its rights");
        }
        catch (CryptographicException)
        {
            return Fault("is no PEM certificate; get the issuer's certificate as PEM");
        }

        ReadFault Fault(string what) => ReadFault.At(file.Line, $"'signed_by': {file.Path} {what}");
    }
}
