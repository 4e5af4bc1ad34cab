using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Security.Cryptography.Xml;
using System.Xml;
using StormClock.Core.Formats.Cap;

namespace StormClock.Service.Feeds.Signatures;

/// <summary>
/// Checks the signature that CAP allows: XML-DSig, enveloped in the alert, over the whole of it (CAP 1.2, 3.3.4.1). Nothing is
/// fetched, and nothing but the configured certificates is believed: a certificate inside the message proves nothing.
/// </summary>
internal static class AlertSignature
{
    /// <summary>A signed alert needs about 15 levels; making its canonical form goes down level by level.</summary>
    private const int MostLevels = 64;

    /// <summary>An office and a distributor may both sign.</summary>
    private const int MostSignatures = 4;

    private static readonly string[] Enveloped = ["http://www.w3.org/2000/09/xmldsig#enveloped-signature"];

    /// <summary>None that leaves out, picks or rewrites parts of the alert, so that what is read is what was signed.</summary>
    private static readonly string[] Canonical =
    [
        "http://www.w3.org/TR/2001/REC-xml-c14n-20010315", "http://www.w3.org/TR/2001/REC-xml-c14n-20010315#WithComments",
        "http://www.w3.org/2001/10/xml-exc-c14n#", "http://www.w3.org/2001/10/xml-exc-c14n#WithComments",
    ];

    /// <summary>SHA-1 can be forged; a keyed hash is no signature.</summary>
    private static readonly string[] Methods =
    [
        "http://www.w3.org/2001/04/xmldsig-more#rsa-sha256", "http://www.w3.org/2001/04/xmldsig-more#rsa-sha384", "http://www.w3.org/2001/04/xmldsig-more#rsa-sha512",
    ];

    private static readonly string[] Digests =
        ["http://www.w3.org/2001/04/xmlenc#sha256", "http://www.w3.org/2001/04/xmldsig-more#sha384", "http://www.w3.org/2001/04/xmlenc#sha512"];

    /// <summary>Whether there is anything in the bytes that looks like a signature.</summary>
    public static bool IsIn(ReadOnlySpan<byte> message) => message.IndexOf("http://www.w3.org/2000/09/xmldsig#"u8) >= 0;

    /// <summary>Why the message must not be believed; null when one of the certificates has signed all of it.</summary>
    public static string? FaultOf(ReadOnlyMemory<byte> message, IReadOnlyList<X509Certificate2> signers)
    {
        if (message.Length > CapReader.MostBytes) return "is too large for its signature to be checked";
        if (Load(message) is not { } document) return "is no XML alert whose signature could be checked";

        var signatures = document.GetElementsByTagName("Signature", SignedXml.XmlDsigNamespaceUrl).OfType<XmlElement>().ToList();
        if (signatures.Count == 0) return "is not signed, though this source's alerts must be";
        if (signatures.Count > MostSignatures) return "carries too many signatures";
        if (signatures.Exists(signature => signature.ParentNode != document.DocumentElement)) return "carries a signature that is not its own, inside another element";

        string? fault = null;
        foreach (var signature in signatures)
        {
            var unfit = Unfit(signature);
            if (unfit is null && signers.Any(signer => IsSignedBy(document, signature, signer))) return null;
            fault ??= unfit ?? "was changed after signing, or somebody else has signed it";
        }

        return fault;
    }

    private static bool IsSignedBy(XmlDocument document, XmlElement signature, X509Certificate2 signer)
    {
        try
        {
            var signed = new SignedXml(document) { Resolver = null! };
            signed.LoadXml(signature);
            using var key = signer.GetRSAPublicKey();
            return key is not null && signed.CheckSignature(key);
        }
        catch (Exception fault) when (fault is CryptographicException or XmlException or FormatException or ArgumentException or InvalidOperationException)
        {
            return false;
        }
    }

    /// <summary>Why a signature is of no use by what it says of itself, before anything is worked out by its word; null when it may be good.</summary>
    private static string? Unfit(XmlElement signature)
    {
        if (Child(signature, "SignedInfo") is not { } info) return "carries a signature without content";
        var references = info.ChildNodes.OfType<XmlElement>().Where(one => one.LocalName == "Reference").ToList();
        if (references.Count != 1 || references[0].GetAttributeNode("URI")?.Value != "") return "carries a signature over something else than the alert itself";

        var transforms = Child(references[0], "Transforms")?.ChildNodes.OfType<XmlElement>().Select(one => one.GetAttribute("Algorithm")).ToList() ?? [];
        if (transforms.Count is 0 or > 3 || !Enveloped.Contains(transforms[0]) || transforms.Skip(1).Any(one => !Canonical.Contains(one))) return "carries a signature with steps that are not accepted";
        return !Canonical.Contains(Algorithm(info, "CanonicalizationMethod")) || !Methods.Contains(Algorithm(info, "SignatureMethod")) || !Digests.Contains(Algorithm(references[0], "DigestMethod"))
            ? "carries a signature of a kind that is not accepted (RSA with SHA-256 or more is)"
            : null;
    }

    private static string Algorithm(XmlElement parent, string child) => Child(parent, child)?.GetAttribute("Algorithm") ?? "";

    private static XmlElement? Child(XmlElement parent, string name) =>
        parent.ChildNodes.OfType<XmlElement>().FirstOrDefault(one => one.LocalName == name && one.NamespaceURI == SignedXml.XmlDsigNamespaceUrl);

    /// <summary>The alert with every blank in it, since each is signed; null when it is no alert, or goes too deep.</summary>
    private static XmlDocument? Load(ReadOnlyMemory<byte> message)
    {
        try
        {
            if (!IsShallow(message)) return null;
            var document = new XmlDocument { PreserveWhitespace = true, XmlResolver = null };
            using var reader = Reader(message);
            document.Load(reader);
            return document.DocumentElement is { LocalName: "alert" } ? document : null;
        }
        catch (Exception fault) when (fault is XmlException or ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }

    private static bool IsShallow(ReadOnlyMemory<byte> message)
    {
        using var reader = Reader(message);
        while (reader.Read())
        {
            if (reader.Depth > MostLevels) return false;
        }

        return true;
    }

    private static XmlReader Reader(ReadOnlyMemory<byte> message) =>
        XmlReader.Create(new MemoryStream(message.ToArray()), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, MaxCharactersInDocument = CapReader.MostBytes });
}
