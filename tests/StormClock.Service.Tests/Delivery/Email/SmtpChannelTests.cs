using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using SmtpServer.Protocol;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using SmtpReply = SmtpServer.Protocol.SmtpResponse;

namespace StormClock.Service.Tests.Delivery.Email;

public sealed class SmtpChannelTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("stormclock-smtp-");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Send_ServerTakesIt_IsDeliveredWhole()
    {
        await using var server = new SmtpHost();
        var outcome = await SendAsync(Letters.Settings(server.Port));

        Assert.Equal(DeliveryResult.Delivered, outcome.Result);
        var letter = Assert.Single(server.Letters);
        Assert.Equal(Letters.Sample.Subject, letter.Subject);
        Assert.Equal(Letters.Sample.MessageId, letter.MessageId);
        Assert.Equal(Letters.Sample.Text, letter.TextBody!.ReplaceLineEndings("\n"));
        Assert.Equal(Letters.Sample.Html, letter.HtmlBody);
        Assert.Equal(("Adà Vale", "ada@garden.example"), (letter.To.Mailboxes.Single().Name, letter.To.Mailboxes.Single().Address));
    }

    /// <summary>4xx may come right, 5xx never does (RFC 5321, 4.2.1).</summary>
    [Theory]
    [InlineData(451, DeliveryResult.TryAgain)]
    [InlineData(452, DeliveryResult.TryAgain)]
    [InlineData(421, DeliveryResult.TryAgain)]
    [InlineData(552, DeliveryResult.Refused)]
    [InlineData(554, DeliveryResult.Refused)]
    public async Task Send_ServerRefusesTheLetter_SaysWhetherToTryAgain(int code, DeliveryResult expected)
    {
        await using var server = new SmtpHost(new SmtpReply((SmtpReplyCode)code, "not today"));
        var outcome = await SendAsync(Letters.Settings(server.Port));

        Assert.Equal(expected, outcome.Result);
        Assert.Contains($"{code}", outcome.Detail, StringComparison.Ordinal);
        Assert.Contains("not today", outcome.Detail, StringComparison.Ordinal);
    }

    /// <summary>Where a conversation breaks decides what is known about the letter.</summary>
    [Theory]
    [InlineData("greeting", "554 no", DeliveryResult.TryAgain)]
    [InlineData("greeting", null, DeliveryResult.TryAgain)]
    [InlineData("greeting", "this is no mail server", DeliveryResult.TryAgain)]
    [InlineData("MAIL", "550 not from you", DeliveryResult.Refused)]
    [InlineData("MAIL", "530 5.7.0 log in first", DeliveryResult.TryAgain)]
    [InlineData("MAIL", null, DeliveryResult.TryAgain)]
    [InlineData("RCPT", "550 nobody here", DeliveryResult.Refused)]
    [InlineData("RCPT", "450 mailbox busy", DeliveryResult.TryAgain)]
    [InlineData("RCPT", null, DeliveryResult.TryAgain)]
    [InlineData("DATA", null, DeliveryResult.TryAgain)]
    [InlineData("content", "451 disk", DeliveryResult.TryAgain)]
    [InlineData("content", "552 too big", DeliveryResult.Refused)]
    [InlineData("content", null, DeliveryResult.Unknown)]
    [InlineData("content", "gibberish", DeliveryResult.Unknown)]
    [InlineData("QUIT", null, DeliveryResult.Delivered)]
    public async Task Send_ConversationBreaks_OutcomeSaysWhatIsKnown(string command, string? reply, DeliveryResult expected)
    {
        await using var server = new ScriptedServer((command, reply));
        Assert.Equal(expected, (await SendAsync(Letters.Settings(server.Port))).Result);
    }

    /// <summary>A server may hang up after it has said no; its answer counts, not the hanging up.</summary>
    [Theory]
    [InlineData("RCPT", "550 nobody here", DeliveryResult.Refused)]
    [InlineData("content", "552 too big", DeliveryResult.Refused)]
    [InlineData("content", "451 disk", DeliveryResult.TryAgain)]
    public async Task Send_RefusedAndHungUpOn_OutcomeIsTheAnswer(string command, string reply, DeliveryResult expected)
    {
        await using var server = new ScriptedServer((command, reply), ("RSET", null));
        Assert.Equal(expected, (await SendAsync(Letters.Settings(server.Port))).Result);
    }

    [Theory]
    [InlineData("greeting", DeliveryResult.TryAgain)]
    [InlineData("RCPT", DeliveryResult.TryAgain)]
    [InlineData("content", DeliveryResult.Unknown)]
    public async Task Send_ServerFallsSilent_EndsByTimeout(string command, DeliveryResult expected)
    {
        await using var server = new ScriptedServer((command, ScriptedServer.Silence));
        Assert.Equal(expected, (await SendAsync(Letters.Settings(server.Port, timeoutSeconds: 1))).Result);
    }

    [Fact]
    public async Task Send_ServiceStopsWhileTheAnswerIsOut_IsUnknown()
    {
        await using var server = new ScriptedServer(("content", ScriptedServer.Silence));
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var sending = new SmtpChannel(Letters.Settings(server.Port)).SendAsync(Letters.Sample, stop.Token);
        stop.CancelAfter(TimeSpan.FromSeconds(1));
        Assert.Equal(DeliveryResult.Unknown, (await sending).Result);
    }

    /// <summary>A connection that was kept open says nothing about the next letter: where it is over, a new one is made.</summary>
    [Theory]
    [InlineData("MAIL", "421 idle too long")]
    [InlineData("MAIL", null)]
    [InlineData("RCPT", null)]
    public async Task Send_KeptConnectionIsOver_GoesOverANewOne(string command, string? reply)
    {
        await using var server = new ScriptedServer();
        var channel = new SmtpChannel(Letters.Settings(server.Port));
        Assert.Equal(DeliveryResult.Delivered, (await channel.SendAsync(Letters.Sample, Cancel)).Result);
        server.Follow((command, reply));
        var second = channel.SendAsync(Letters.Sample, Cancel);
        while (server.Connections < 2 && !second.IsCompleted) await Task.Yield();
        server.Follow();
        var outcome = await second;
        await channel.RestAsync();

        // The script is mended while the new connection is made; where that was too late, the letter waits and is not lost.
        Assert.True(outcome.Result is DeliveryResult.Delivered or DeliveryResult.TryAgain);
        Assert.Equal(2, server.Connections);
    }

    [Fact]
    public async Task Send_ManyLetters_GoOverOneConnectionAHundred()
    {
        await using var server = new ScriptedServer();
        var channel = new SmtpChannel(Letters.Settings(server.Port));
        for (var i = 0; i < 250; i++) Assert.Equal(DeliveryResult.Delivered, (await channel.SendAsync(Letters.Sample, Cancel)).Result);
        await channel.RestAsync();

        Assert.Equal((250, 3), (server.Arrived.Count, server.Connections));
    }

    [Fact]
    public async Task Send_ServerDown_IsAskedOnceUntilTheNextRest()
    {
        await using var server = new ScriptedServer(("greeting", "421 closed"));
        var channel = new SmtpChannel(Letters.Settings(server.Port));
        for (var i = 0; i < 5; i++) Assert.Equal(DeliveryResult.TryAgain, (await channel.SendAsync(Letters.Sample, Cancel)).Result);
        Assert.Equal(1, server.Connections);

        await channel.RestAsync();
        server.Follow();
        Assert.Equal(DeliveryResult.Delivered, (await channel.SendAsync(Letters.Sample, Cancel)).Result);
    }

    [Fact]
    public async Task Send_ServerDown_IsTriedAgain()
    {
        var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        listener.Stop();
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Letters.Settings(port))).Result);
    }

    [Theory]
    [InlineData("open sesame", DeliveryResult.Delivered)]
    [InlineData("wrong", DeliveryResult.TryAgain)]
    public async Task Send_WithPasswordFile_LogsIn(string password, DeliveryResult expected)
    {
        await using var server = new SmtpHost(login: ("box", "open sesame"));
        var file = Path.Combine(folder.FullName, "password");
        await File.WriteAllTextAsync(file, password + "\n", Cancel);
        var outcome = await SendAsync(Letters.Settings(server.Port) with { User = "box", PasswordFile = file });

        Assert.Equal(expected, outcome.Result);
        Assert.DoesNotContain(password, outcome.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Send_PasswordFileMissing_IsTriedAgain()
    {
        await using var server = new SmtpHost(login: ("box", "open sesame"));
        var settings = Letters.Settings(server.Port) with { User = "box", PasswordFile = Path.Combine(folder.FullName, "none") };
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(settings)).Result);
        Assert.Empty(server.Letters);
    }

    [Fact]
    public async Task Send_CertificateUnknown_IsNotSent()
    {
        using var certificate = SelfMade("127.0.0.1");
        await using var server = new SmtpHost(certificate: certificate);
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Letters.Settings(server.Port, EmailSecurity.StartTls))).Result);
        Assert.Empty(server.Letters);
    }

    [Fact]
    public async Task Send_CertificateTrustedByFile_IsSentEncrypted()
    {
        using var certificate = SelfMade("127.0.0.1");
        await using var server = new SmtpHost(certificate: certificate);
        Assert.Equal(DeliveryResult.Delivered, (await SendAsync(Trusting(server, certificate))).Result);
        Assert.Single(server.Letters);
    }

    [Fact]
    public async Task Send_AnotherCertificateTrusted_IsNotSent()
    {
        using var certificate = SelfMade("127.0.0.1");
        using var other = SelfMade("127.0.0.1");
        await using var server = new SmtpHost(certificate: certificate);
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Trusting(server, other))).Result);
        Assert.Empty(server.Letters);
    }

    [Fact]
    public async Task Send_TrustedCertificateOfAnotherName_IsNotSent()
    {
        using var certificate = SelfMade("127.0.0.2");
        await using var server = new SmtpHost(certificate: certificate);
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Trusting(server, certificate))).Result);
        Assert.Empty(server.Letters);
    }

    [Fact]
    public async Task Send_TrustedCertificateOutOfDate_IsNotSent()
    {
        using var certificate = SelfMade("127.0.0.1", ended: true);
        await using var server = new SmtpHost(certificate: certificate);
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Trusting(server, certificate))).Result);
        Assert.Empty(server.Letters);
    }

    [Fact]
    public async Task Send_ServerWithoutStartTls_IsNotSentInTheOpen()
    {
        await using var server = new SmtpHost();
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Letters.Settings(server.Port, EmailSecurity.StartTls))).Result);
        Assert.Empty(server.Letters);
    }

    [Fact]
    public async Task Send_AddressIsNone_IsRefused()
    {
        await using var server = new SmtpHost();
        var outcome = await new SmtpChannel(Letters.Settings(server.Port)).SendAsync(Letters.Sample with { ToAddress = "ada" }, Cancel);
        Assert.Equal(DeliveryResult.Refused, outcome.Result);
        Assert.Empty(server.Letters);
    }

    private static async Task<DeliveryOutcome> SendAsync(EmailSettings settings)
    {
        var channel = new SmtpChannel(settings);
        var outcome = await channel.SendAsync(Letters.Sample, Cancel);
        await channel.RestAsync();
        return outcome;
    }

    private EmailSettings Trusting(SmtpHost server, X509Certificate2 certificate)
    {
        var file = Path.Combine(folder.FullName, "trusted.pem");
        File.WriteAllText(file, certificate.ExportCertificatePem());
        return Letters.Settings(server.Port, EmailSecurity.StartTls) with { TrustedCertificateFile = file };
    }

    private static X509Certificate2 SelfMade(string address, bool ended = false)
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=invented mail server", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Parse(address));
        request.CertificateExtensions.Add(names.Build());
        var from = new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero);
        return request.CreateSelfSigned(from, ended ? from.AddYears(1) : from.AddYears(60));
    }
}
