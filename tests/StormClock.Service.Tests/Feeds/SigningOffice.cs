using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Security.Cryptography.Xml;
using System.Text;
using System.Xml;

namespace StormClock.Service.Tests.Feeds;

/// <summary>An invented office with a key of its own, made anew for each test run.</summary>
internal sealed class SigningOffice : IDisposable
{
    private readonly RSA key = RSA.Create(2048);

    public SigningOffice()
    {
        var now = TimeProvider.System.GetUtcNow();
        Certificate = new CertificateRequest("CN=Invented office", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1).CreateSelfSigned(now.AddDays(-1), now.AddDays(30));
    }

    public X509Certificate2 Certificate { get; }

    public static string Alert(string identifier = "urn:example:81", string description = "Wind à 5 &lt; 6\n  ") => $"""
        <alert xmlns="urn:oasis:names:tc:emergency:cap:1.2">
          <identifier>{identifier}</identifier><sender>wind@example.org</sender>
          <sent>2027-09-21T15:00:00-04:00</sent><status>Actual</status><msgType>Alert</msgType>
          <info><event>Gale Warning</event><description>{description}</description></info>
        </alert>
        """;

    /// <summary>The alert with an enveloped signature over the whole of it, unless told otherwise.</summary>
    public string Sign(string alert, string uri = "", string? method = null, string? digest = null, params Transform[] transforms)
    {
        var document = new XmlDocument { PreserveWhitespace = true };
        document.LoadXml(alert);
        var signed = new ById(document) { SigningKey = key };
        signed.SignedInfo!.CanonicalizationMethod = SignedXml.XmlDsigExcC14NTransformUrl;
        signed.SignedInfo.SignatureMethod = method ?? SignedXml.XmlDsigRSASHA256Url;
        var reference = new Reference(uri) { DigestMethod = digest ?? SignedXml.XmlDsigSHA256Url };
        foreach (var transform in transforms.Length > 0 ? transforms : [new XmlDsigEnvelopedSignatureTransform(), new XmlDsigExcC14NTransform()]) reference.AddTransform(transform);
        signed.AddReference(reference);
        signed.ComputeSignature();
        document.DocumentElement!.AppendChild(document.ImportNode(signed.GetXml(), deep: true));
        return document.OuterXml;
    }

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    public void Dispose()
    {
        Certificate.Dispose();
        key.Dispose();
    }

    /// <summary>Finds elements by an attribute named Id of any element, as a careless reader would.</summary>
    private sealed class ById(XmlDocument document) : SignedXml(document)
    {
        public override XmlElement? GetIdElement(XmlDocument? document, string idValue) => document?.SelectSingleNode($"//*[@Id='{idValue}']") as XmlElement;
    }
}
