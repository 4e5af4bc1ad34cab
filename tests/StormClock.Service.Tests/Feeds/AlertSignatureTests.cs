using System.Security.Cryptography.X509Certificates;
using System.Security.Cryptography.Xml;
using System.Xml;
using StormClock.Core.Formats.Feeds;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Signatures;
using StormClock.Service.Feeds.Web;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Feeds;

public sealed class AlertSignatureTests : IDisposable
{
    private readonly SigningOffice office = new();
    private readonly SigningOffice other = new();

    public void Dispose()
    {
        office.Dispose();
        other.Dispose();
    }

    [Fact]
    public void Checking_AlertAsItWasSigned_IsGood()
    {
        Assert.Null(Fault(office.Sign(SigningOffice.Alert())));
        Assert.Null(Fault(office.Sign(SigningOffice.Alert(), transforms: [new XmlDsigEnvelopedSignatureTransform(), new XmlDsigC14NTransform()])));
        Assert.Null(Fault("\uFEFF" + office.Sign(SigningOffice.Alert())));
        Assert.Null(Fault(office.Sign(SigningOffice.Alert()), other.Certificate, office.Certificate));
    }

    [Theory]
    [InlineData("Gale Warning", "Gale Warned")]
    [InlineData("à", "a")]
    [InlineData("<status>Actual</status>", "<status>Test</status>")]
    [InlineData("<info>", "<info><responseType>AllClear</responseType>")]
    [InlineData("</info>", "</info><info><event>Evacuation</event></info>")]
    [InlineData("6\n  ", "6\n ")]
    public void Checking_AlteredAfterSigning_IsRefused(string good, string altered)
    {
        var alert = office.Sign(SigningOffice.Alert());
        Assert.Contains(good, alert);
        Assert.Contains("was changed after signing", Fault(alert.Replace(good, altered)));
    }

    [Fact]
    public void Checking_SignedByAnother_IsRefusedWhateverCertificateItCarries() =>
        Assert.Contains("somebody else has signed it", Fault(other.Sign(SigningOffice.Alert())));

    [Fact]
    public void Checking_NoSignature_IsRefused()
    {
        Assert.Contains("not signed", Fault(SigningOffice.Alert()));
        Assert.Contains("no XML alert", Fault("WTNT24 KXXX 280247\n\nSTORM FORECAST/ADVISORY NUMBER  20"));
        Assert.Contains("no XML alert", Fault("<!DOCTYPE alert [<!ENTITY e \"x\">]>" + office.Sign(SigningOffice.Alert())));
    }

    /// <summary>The signed alert is moved aside whole, and another is put where the reader looks.</summary>
    [Fact]
    public void Checking_SignatureWrapped_IsRefused()
    {
        var good = office.Sign(SigningOffice.Alert());
        var signature = good[good.IndexOf("<Signature", StringComparison.Ordinal)..(good.IndexOf("</Signature>", StringComparison.Ordinal) + "</Signature>".Length)];
        var forged = SigningOffice.Alert("urn:example:forged");

        Assert.Contains("changed after signing", Fault(forged.Replace("</alert>", signature + "</alert>")));
        Assert.Contains("inside another element", Fault(forged.Replace("</alert>", $"<x xmlns='urn:x'>{good}</x></alert>")));
        Assert.NotNull(Fault(forged.Replace("</alert>", signature.Replace("</Signature>", $"<Object>{SigningOffice.Alert()}</Object></Signature>") + "</alert>")));

        // Signed by its Id, and then put beside what is read.
        var byId = SigningOffice.Alert().Replace("<info>", "<info Id='signed'>");
        var signedPart = office.Sign(byId, uri: "#signed", transforms: [new XmlDsigExcC14NTransform()]);
        Assert.Contains("something else than the alert itself", Fault(signedPart));
    }

    [Theory]
    [InlineData("http://example.invalid/alert.xml")]
    [InlineData("file:///etc/hostname")]
    [InlineData("#xpointer(/)")]
    [InlineData("x")]
    public void Checking_ReferenceElsewhere_IsRefusedAndNotFollowed(string uri) =>
        Assert.Contains("something else than the alert itself", Fault(office.Sign(SigningOffice.Alert()).Replace("<Reference URI=\"\">", $"<Reference URI=\"{uri}\">")));

    [Fact]
    public void Checking_SeveralReferencesOrNone_IsRefused()
    {
        var good = office.Sign(SigningOffice.Alert());
        var reference = good[good.IndexOf("<Reference", StringComparison.Ordinal)..(good.IndexOf("</Reference>", StringComparison.Ordinal) + "</Reference>".Length)];
        Assert.Contains("something else", Fault(good.Replace(reference, reference + reference)));
        Assert.Contains("something else", Fault(good.Replace(reference, "")));
        Assert.Contains("without content", Fault(SigningOffice.Alert().Replace("</alert>", "<Signature xmlns='http://www.w3.org/2000/09/xmldsig#'/></alert>")));
    }

    /// <summary>Steps that pick parts, or run programs, could leave out of the signature what is read.</summary>
    [Fact]
    public void Checking_OtherSteps_AreRefused()
    {
        var filter = new XmlDocument();
        filter.LoadXml("<XPath xmlns=\"http://www.w3.org/2000/09/xmldsig#\">not(ancestor-or-self::*[local-name()='description'])</XPath>");
        var path = new XmlDsigXPathTransform();
        path.LoadInnerXml(filter.ChildNodes);
        Assert.Contains("steps that are not accepted", Fault(office.Sign(SigningOffice.Alert(), transforms: [new XmlDsigEnvelopedSignatureTransform(), path, new XmlDsigExcC14NTransform()])));
        Assert.Contains("steps that are not accepted", Fault(office.Sign(SigningOffice.Alert()).Replace("http://www.w3.org/2000/09/xmldsig#enveloped-signature", "http://www.w3.org/TR/1999/REC-xslt-19991116")));
        Assert.Contains("steps that are not accepted", Fault(office.Sign(SigningOffice.Alert(), transforms: [new XmlDsigExcC14NTransform()])));
    }

    [Theory]
    [InlineData(SignedXml.XmlDsigRSASHA1Url, SignedXml.XmlDsigSHA256Url)]
    [InlineData(SignedXml.XmlDsigRSASHA256Url, SignedXml.XmlDsigSHA1Url)]
    public void Checking_WeakHash_IsRefused(string method, string digest) =>
        Assert.Contains("a kind that is not accepted", Fault(office.Sign(SigningOffice.Alert(), method: method, digest: digest)));

    [Fact]
    public void Checking_KeyedHash_IsRefused() =>
        Assert.Contains("a kind that is not accepted", Fault(office.Sign(SigningOffice.Alert()).Replace(SignedXml.XmlDsigRSASHA256Url, SignedXml.XmlDsigHMACSHA1Url)));

    [Fact]
    public void Checking_HugeDeepOrManySignatures_IsRefused()
    {
        var good = office.Sign(SigningOffice.Alert());
        var deep = string.Concat(Enumerable.Repeat("<x xmlns='urn:x'>", 20_000)) + string.Concat(Enumerable.Repeat("</x>", 20_000));
        Assert.Contains("too large", Fault(good.Replace("Gale Warning", new string('x', 1024 * 1024))));
        Assert.Contains("no XML alert", Fault(good.Replace("<info>", deep + "<info>")));
        var signature = good[good.IndexOf("<Signature", StringComparison.Ordinal)..good.IndexOf("</alert>", StringComparison.Ordinal)];
        Assert.Contains("too many", Fault(good.Replace(signature, string.Concat(Enumerable.Repeat(signature, 5)))));
    }

    [Fact]
    public void Checking_SpoiltAtRandom_IsRefusedAndNeverThrows()
    {
        var good = SigningOffice.Bytes(office.Sign(SigningOffice.Alert()));
        var random = new Random(7);
        for (var k = 0; k < 1500; k++)
        {
            var bytes = good.ToArray();
            bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
            var fault = AlertSignature.FaultOf(bytes, [office.Certificate]);
            if (fault is null) Assert.Equal(Read(good), Read(bytes)); // e.g. a blank within a tag, or in the base64
        }
    }

    /// <summary>In a list the alert keeps its blanks and its signature.</summary>
    [Fact]
    public async Task Look_SignedAlertsInAList_TakesTheGoodOnesAndTellsOfTheOthers()
    {
        await using var server = await StubServer.StartAsync();
        var (good, altered, plain) = (office.Sign(SigningOffice.Alert("good")), office.Sign(SigningOffice.Alert("altered")).Replace("Gale", "Storm"), SigningOffice.Alert("plain"));
        server.OnBody("/list", SigningOffice.Bytes($"""
            <feed xmlns="http://www.w3.org/2005/Atom" xmlns:x="urn:x"><title>Invented</title><entry><id>1</id><content type="text/xml">
            {good}</content></entry><entry><id>2</id><content>{altered}</content></entry><entry><id>3</id><content>{plain}</content></entry></feed>
            """));
        using var listener = new Listener(listener => [List(listener, server, new FeedSigners([office.Certificate]))]);

        await listener.ListenAsync();

        Assert.Equal("good", Assert.IsType<StormClock.Core.Advisories.AlertMessage>(Assert.Single(listener.Inbox.Ledger.All).Advisory).Identifier);
        Assert.Equal(2, listener.Inbox.Troubles.Count);
        Assert.Contains(listener.Inbox.Troubles, trouble => trouble.Contains("changed after signing", StringComparison.Ordinal));
        Assert.Contains(listener.Inbox.Troubles, trouble => trouble.Contains("not signed", StringComparison.Ordinal));
        Assert.Equal("checked", Signatures(listener));
    }

    [Fact]
    public async Task Look_SignedButNoCertificateConfigured_IsReadAndSaysThatItWasNotChecked()
    {
        await using var server = await StubServer.StartAsync();
        server.OnBody("/list", SigningOffice.Bytes($"<feed xmlns=\"http://www.w3.org/2005/Atom\"><entry><id>1</id><content>{SigningOffice.Alert()}</content></entry></feed>"));
        using var listener = new Listener(listener => [List(listener, server, null)]);
        await listener.ListenAsync();
        Assert.Null(Signatures(listener));

        server.OnBody("/list", SigningOffice.Bytes($"<feed xmlns=\"http://www.w3.org/2005/Atom\"><entry><id>2</id><content>{other.Sign(SigningOffice.Alert("second"))}</content></entry></feed>"));
        listener.Time.Advance(TimeSpan.FromMinutes(10));
        await listener.ListenAsync();

        Assert.Equal(2, listener.Inbox.Ledger.All.Count);
        Assert.Equal("not checked", Signatures(listener));
    }

    [Fact]
    public void Loading_Certificates_TakesPemAndNamesWhatIsNone()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("good.pem"), other.Certificate.ExportCertificatePem() + "\n" + office.Certificate.ExportCertificatePem());
        File.WriteAllText(folder.File("bad.pem"), "no certificate");

        Assert.Null(FeedSigners.Load(new(folder.File("good.pem"), 7)).Value!.FaultOf(SigningOffice.Bytes(office.Sign(SigningOffice.Alert()))));
        var bad = Assert.Single(FeedSigners.Load(new(folder.File("bad.pem"), 7)).Faults);
        Assert.Contains("holds no certificate", bad.Reason);
        Assert.Equal(7, bad.Line);
        Assert.Contains("is not there", Assert.Single(FeedSigners.Load(new(folder.File("none.pem"), 7)).Faults).Reason);
    }

    private static ListFeed List(Listener listener, StubServer server, FeedSigners? signers) =>
        new(Listener.Source("list") with { Signers = signers }, server.At("/list"), Listener.Client(), FeedIndexReader.Read, new SeenEntries(listener.Store, "list"), new GardenPlaces(listener.Gardens));

    private static string? Signatures(Listener listener) => Assert.Single(StormClock.Service.Desk.SourceHealth.Of(listener.Watch, listener.Now)).Signatures;

    private string? Fault(string alert, params X509Certificate2[] signers) =>
        AlertSignature.FaultOf(SigningOffice.Bytes(alert), signers.Length > 0 ? signers : [office.Certificate]);

    private static string Read(byte[] alert) => System.Text.Json.JsonSerializer.Serialize(StormClock.Core.Formats.Cap.CapReader.Read(alert).Value);
}
