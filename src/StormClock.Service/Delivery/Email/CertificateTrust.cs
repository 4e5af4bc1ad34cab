using System.Net.Security;
using System.Security.Cryptography.X509Certificates;

namespace StormClock.Service.Delivery.Email;

/// <summary>
/// Which certificates of a mail server hold: what the system trusts, or what a named file adds. The name must fit in any
/// case; nothing here accepts a certificate for want of a better one.
/// </summary>
internal static class CertificateTrust
{
    private const string ServerAuthentication = "1.3.6.1.5.5.7.3.1";

    /// <param name="trusted">Certificates of <see cref="EmailSettings.TrustedCertificateFile"/>; may be empty.</param>
    public static RemoteCertificateValidationCallback Check(X509Certificate2Collection trusted, bool checkRevocation) =>
        (_, certificate, chain, errors) => errors switch
        {
            SslPolicyErrors.None => true,
            SslPolicyErrors.RemoteCertificateChainErrors when trusted.Count > 0 && certificate is X509Certificate2 server =>
                LeadsTo(trusted, server, chain, checkRevocation),
            _ => false,
        };

    public static X509Certificate2Collection Load(string? pemFile)
    {
        var trusted = new X509Certificate2Collection();
        if (pemFile is not null) trusted.ImportFromPemFile(pemFile);

        return trusted;
    }

    private static bool LeadsTo(X509Certificate2Collection trusted, X509Certificate2 server, X509Chain? sent, bool checkRevocation)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.AddRange(trusted);
        chain.ChainPolicy.RevocationMode = checkRevocation ? X509RevocationMode.Online : X509RevocationMode.NoCheck;
        chain.ChainPolicy.ApplicationPolicy.Add(new(ServerAuthentication));
        foreach (var element in sent?.ChainElements ?? Enumerable.Empty<X509ChainElement>()) chain.ChainPolicy.ExtraStore.Add(element.Certificate);

        return chain.Build(server);
    }
}
