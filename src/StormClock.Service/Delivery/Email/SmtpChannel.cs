using System.Net.Sockets;
using MailKit.Net.Smtp;
using MimeKit;
using StormClock.Core.Reminders;

namespace StormClock.Service.Delivery.Email;

/// <summary>
/// Hands messages to a mail server, over one connection until <see cref="RestAsync"/>: nothing stays open between two turns. A
/// retry carries the same Message-ID, so that a message whose fate was unknown does not show twice.
/// </summary>
public sealed class SmtpChannel : IChannel
{
    /// <summary>A whole delivery may take as many timeouts, against a server that answers one byte at a time.</summary>
    private const int TimeoutsInAll = 6;

    /// <summary>Servers bound what they take in one go; a new connection now and then costs nothing.</summary>
    private const int LettersAConnection = 100;

    private readonly EmailSettings settings;
    private SmtpClient? open;
    private int carried;
    private DeliveryOutcome? unreachable;

    /// <param name="settings">Checked before; faulty settings are a bug here.</param>
    public SmtpChannel(EmailSettings settings)
    {
        if (settings.Faults() is [var first, ..]) throw new ArgumentException(first, nameof(settings));

        this.settings = settings;
    }

    public string Name => Reach.Mail;

    public async Task<DeliveryOutcome> SendAsync(Outgoing message, CancellationToken cancellation)
    {
        var letter = MimeLetter.Build(message, settings.From);
        if (letter.Value is null) return new DeliveryOutcome(DeliveryResult.Refused, letter.Faults[0].Reason);

        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(settings.Timeout.ToTimeSpan() * TimeoutsInAll);
        if (carried == LettersAConnection) await HangUpAsync();
        if (open is { } kept && await HandOverAsync(kept, letter.Value, isKept: true, limit.Token) is { } outcome) return outcome;

        // A server that cannot be reached is asked once, not once for each letter; nor is a wrong password tried again and again.
        unreachable ??= await ConnectAsync(limit.Token);
        return unreachable ?? (await HandOverAsync(open!, letter.Value, isKept: false, limit.Token))!;
    }

    public async Task RestAsync()
    {
        await HangUpAsync();
        unreachable = null;
    }

    /// <summary>Null when the server is ready to take a letter.</summary>
    private async Task<DeliveryOutcome?> ConnectAsync(CancellationToken cancellation)
    {
        (open, carried) = (new SmtpClient(), 0);
        try
        {
            var trusted = CertificateTrust.Load(settings.TrustedCertificateFile);
            open.Timeout = (int)settings.Timeout.TotalMilliseconds;
            open.CheckCertificateRevocation = settings.CheckRevocation;
            open.ServerCertificateValidationCallback = CertificateTrust.Check(trusted, settings.CheckRevocation);
            await open.ConnectAsync(await SocketAsync(cancellation), settings.Host, settings.Port, settings.Security.SocketOptions(), cancellation);
            if (settings.User is { } user) await open.AuthenticateAsync(user, await PasswordAsync(cancellation), cancellation);

            return null;
        }
        catch (Exception fault) when (SmtpFaults.IsOutside(fault))
        {
            Drop();
            return SmtpFaults.WhileConnecting(fault);
        }
    }

    /// <summary>Without the delay that gathers small packets: it makes each letter wait twice for an acknowledgement that the other side holds back.</summary>
    private async Task<Socket> SocketAsync(CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(settings.Timeout.ToTimeSpan());
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(settings.Host, settings.Port, limit.Token);
            return socket;
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Null when a connection kept from an earlier letter turned out to be over before anything of this one had gone out: that says nothing
    /// about the letter.
    /// </summary>
    private async Task<DeliveryOutcome?> HandOverAsync(SmtpClient client, MimeMessage letter, bool isKept, CancellationToken cancellation)
    {
        var content = new ContentWatch();
        carried++;
        try
        {
            return new DeliveryOutcome(DeliveryResult.Delivered, SmtpFaults.Detail(await client.SendAsync(FormatOptions.Default, letter, cancellation, content)));
        }
        catch (Exception fault) when (SmtpFaults.IsOutside(fault))
        {
            var over = SmtpFaults.EndsConnection(fault);
            if (over) Drop();
            return isKept && over && !content.Began && !cancellation.IsCancellationRequested ? null : SmtpFaults.WhileSending(fault, content.Began);
        }
    }

    /// <summary>What was taken is taken by now; a server that hangs up first changes nothing about that.</summary>
    private async Task HangUpAsync()
    {
        if (open is null) return;
        using var limit = new CancellationTokenSource(settings.Timeout.ToTimeSpan());
        try
        {
            await open.DisconnectAsync(quit: true, limit.Token);
        }
        catch (Exception fault) when (SmtpFaults.IsOutside(fault))
        {
            // It is closed all the same.
        }

        Drop();
    }

    private void Drop()
    {
        open?.Dispose();
        (open, carried) = (null, 0);
    }

    private async Task<string> PasswordAsync(CancellationToken cancellation) =>
        settings.Password ?? (await File.ReadAllTextAsync(settings.PasswordFile!, cancellation)).TrimEnd('\r', '\n');
}
