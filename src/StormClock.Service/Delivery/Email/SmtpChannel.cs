using MailKit.Net.Smtp;
using MimeKit;
using StormClock.Core.Reminders;

namespace StormClock.Service.Delivery.Email;

/// <summary>
/// Hands messages to a mail server, one connection a message: a handful a day, and no connection grows stale. A retry
/// carries the same Message-ID, so that a message whose fate was unknown does not show twice.
/// </summary>
public sealed class SmtpChannel : IChannel
{
    /// <summary>A whole delivery may take as many timeouts, against a server that answers one byte at a time.</summary>
    private const int TimeoutsInAll = 6;

    private readonly EmailSettings settings;

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
        using var client = new SmtpClient();
        return await ConnectAsync(client, limit.Token) ?? await HandOverAsync(client, letter.Value, limit.Token);
    }

    /// <summary>Null when the server is ready to take a letter.</summary>
    private async Task<DeliveryOutcome?> ConnectAsync(SmtpClient client, CancellationToken cancellation)
    {
        try
        {
            var trusted = CertificateTrust.Load(settings.TrustedCertificateFile);
            client.Timeout = (int)settings.Timeout.TotalMilliseconds;
            client.CheckCertificateRevocation = settings.CheckRevocation;
            client.ServerCertificateValidationCallback = CertificateTrust.Check(trusted, settings.CheckRevocation);
            await client.ConnectAsync(settings.Host, settings.Port, settings.Security.SocketOptions(), cancellation);
            if (settings.User is { } user) await client.AuthenticateAsync(user, await PasswordAsync(cancellation), cancellation);

            return null;
        }
        catch (Exception fault) when (SmtpFaults.IsOutside(fault))
        {
            return SmtpFaults.WhileConnecting(fault);
        }
    }

    private static async Task<DeliveryOutcome> HandOverAsync(SmtpClient client, MimeMessage letter, CancellationToken cancellation)
    {
        var content = new ContentWatch();
        try
        {
            var answer = await client.SendAsync(FormatOptions.Default, letter, cancellation, content);
            await SayGoodbyeAsync(client, cancellation);
            return new DeliveryOutcome(DeliveryResult.Delivered, SmtpFaults.Detail(answer));
        }
        catch (Exception fault) when (SmtpFaults.IsOutside(fault))
        {
            return SmtpFaults.WhileSending(fault, content.Began);
        }
    }

    /// <summary>The letter is taken by now; a server that hangs up first changes nothing about that.</summary>
    private static async Task SayGoodbyeAsync(SmtpClient client, CancellationToken cancellation)
    {
        try
        {
            await client.DisconnectAsync(quit: true, cancellation);
        }
        catch (Exception fault) when (SmtpFaults.IsOutside(fault))
        {
            client.Dispose();
        }
    }

    private async Task<string> PasswordAsync(CancellationToken cancellation) =>
        settings.Password ?? (await File.ReadAllTextAsync(settings.PasswordFile!, cancellation)).TrimEnd('\r', '\n');
}
