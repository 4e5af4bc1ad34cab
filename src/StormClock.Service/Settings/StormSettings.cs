using System.Net;
using StormClock.Core.Reminders;

namespace StormClock.Service.Settings;

/// <summary>How one installation is set up: <c>config/stormclock.yaml</c>. It holds no secret, only where secrets are kept.</summary>
/// <param name="Mail">Null: messages are written as .eml files.</param>
/// <param name="DataFolder">Where the state lives; relative to the working folder.</param>
/// <param name="QuietHours">Null: messages may come at any hour.</param>
public sealed record StormSettings(
    MailSettings? Mail,
    ListenSettings Pages,
    string DataFolder,
    IReadOnlyList<FeedSettings> Feeds,
    QuietHours? QuietHours)
{
    /// <summary>Gateways of people's own.</summary>
    public IReadOnlyList<WebhookSettings> Webhooks { get; init; } = [];

    /// <summary>Null: answers by mail are not read.</summary>
    public ReplySettings? Replies { get; init; }

    /// <summary>Null: no sign of life is sent.</summary>
    public HeartbeatSettings? Heartbeat { get; init; }

    /// <summary>What holds without a settings file.</summary>
    public static StormSettings Defaults { get; } = new(null, ListenSettings.Defaults, "data", [], null);
}

/// <summary>Stated, never guessed: a guess could end in plain text.</summary>
public enum MailSecurity { StartTls, Tls }

/// <param name="User">Null when the server asks for no login; then there is no password either.</param>
/// <param name="PasswordFile">File whose first line is the password; null when it is kept elsewhere.</param>
/// <param name="PasswordVariable">Environment variable that holds the password; null when it is kept elsewhere.</param>
/// <param name="TrustedCertificateFile">A certificate of the keeper's own server; null for the system's authorities alone.</param>
public sealed record MailSettings(
    string Host,
    int Port,
    MailSecurity Security,
    string? User,
    string? PasswordFile,
    string? PasswordVariable,
    string From,
    string FromName,
    string? TrustedCertificateFile);

/// <summary>The mailbox (IMAP) into which answers to messages come.</summary>
/// <param name="PasswordFile">File whose first line is the password; null when it is kept elsewhere.</param>
/// <param name="PasswordVariable">Environment variable that holds the password; null when it is kept elsewhere.</param>
/// <param name="Address">Where answers are sent to; they must land in this mailbox.</param>
/// <param name="MoveTo">Folder into which settled answers are moved; null leaves them, marked as read.</param>
/// <param name="TrustedCertificateFile">A certificate of the keeper's own server; null for the system's authorities alone.</param>
public sealed record ReplySettings(
    string Host,
    int Port,
    MailSecurity Security,
    string User,
    string? PasswordFile,
    string? PasswordVariable,
    string Address,
    string Folder,
    string? MoveTo,
    Duration Every,
    string? TrustedCertificateFile);

/// <param name="Listen">Where the pages are served on this box.</param>
/// <param name="Address">What links in messages begin with; null: messages carry no links.</param>
public sealed record ListenSettings(IPEndPoint Listen, Uri? Address)
{
    public static ListenSettings Defaults { get; } = new(new IPEndPoint(IPAddress.Loopback, 8427), null);

    /// <summary>An address that only this box can open is of no use in a message.</summary>
    public bool PhonesCanReach => Address is { IsLoopback: false };
}
