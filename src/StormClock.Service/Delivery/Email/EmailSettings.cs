using System.Net;
using MailKit.Security;

namespace StormClock.Service.Delivery.Email;

/// <summary>How the way to the mail server is kept private. There is no "whatever works": a server that cannot do it gets no mail.</summary>
public enum EmailSecurity
{
    /// <summary>Plain greeting, then encryption before anything else (usually port 587).</summary>
    StartTls,

    /// <summary>Encryption from the first byte (usually port 465).</summary>
    Tls,

    /// <summary>No encryption: only to a mail server on this very machine.</summary>
    None,
}

internal static class EmailSecurities
{
    public static SecureSocketOptions SocketOptions(this EmailSecurity security) => security switch
    {
        EmailSecurity.StartTls => SecureSocketOptions.StartTls,
        EmailSecurity.Tls => SecureSocketOptions.SslOnConnect,
        _ => SecureSocketOptions.None,
    };
}

/// <summary>Whom messages come from.</summary>
/// <param name="ReplyTo">Where answers go; null for the same address.</param>
public sealed record EmailSender(string Name, string Address, string? ReplyTo = null);

/// <summary>The mail server that takes our messages.</summary>
/// <param name="User">Null when the server asks for no name.</param>
/// <param name="Password">The password itself, or null; never together with <paramref name="PasswordFile"/>.</param>
/// <param name="PasswordFile">File that holds the password, read at each use.</param>
/// <param name="Timeout">For each answer of the server.</param>
/// <param name="CheckRevocation">Whether the certificate is looked up as withdrawn; the lookup's own failure then holds mail back until it works.</param>
/// <param name="TrustedCertificateFile">PEM file of certificates trusted beside the system's, for a mail server with a certificate of its own making.</param>
public sealed record EmailSettings(
    string Host,
    int Port,
    EmailSecurity Security,
    EmailSender From,
    Duration Timeout,
    bool CheckRevocation,
    string? User = null,
    string? Password = null,
    string? PasswordFile = null,
    string? TrustedCertificateFile = null)
{
    /// <summary>Everything wrong with the settings, each with its mend; empty when they can be used.</summary>
    public IReadOnlyList<string> Faults() =>
    [
        .. Fault(string.IsNullOrWhiteSpace(Host), "host is missing: name the mail server."),
        .. Fault(Port is < 1 or > 65535, $"port {Port} is none: give 1 to 65535, usually 587 or 465."),
        .. Fault(
            Security == EmailSecurity.None && !IsLoopback(Host),
            $"security none is for a mail server on this machine only: use start-tls or tls for {Host}."),
        .. Fault(!MimeLetter.IsAddress(From.Address), $"from address '{From.Address}' is no mail address: write name@domain."),
        .. Fault(Timeout < Duration.FromSeconds(1) || Timeout > Duration.FromMinutes(10), "timeout must be 1 s to 10 min."),
        .. Fault(Password is not null && PasswordFile is not null, "password and password-file are both given: keep one."),
        .. Fault(User is not null && Password is null && PasswordFile is null, "user is given without a password: add password or password-file."),
        .. Fault(User is null && (Password ?? PasswordFile) is not null, "a password is given without a user: add user."),
    ];

    /// <summary>Shows where mail goes and never the password.</summary>
    public override string ToString() => $"{Host}:{Port} ({Security})";

    private static IEnumerable<string> Fault(bool wrong, string fault) => wrong ? [fault] : [];

    private static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));
}
