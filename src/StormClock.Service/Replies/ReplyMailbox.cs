using StormClock.Service.Delivery.Email;

namespace StormClock.Service.Replies;

/// <summary>The mailbox into which answers come.</summary>
/// <param name="MoveTo">Folder for settled answers; null leaves them where they are, marked as read.</param>
/// <param name="Timeout">For each answer of the server.</param>
internal sealed record ReplyMailbox(
    string Host,
    int Port,
    EmailSecurity Security,
    string User,
    string Password,
    string Folder,
    string? MoveTo,
    Duration Timeout,
    string? TrustedCertificateFile = null)
{
    /// <summary>Tells this mailbox from others, for what is remembered of it; no secret.</summary>
    public string Name => $"{User}@{Host}:{Port}/{Folder}";

    /// <summary>Never the password.</summary>
    public override string ToString() => Name;
}

/// <summary>What a host needs to take answers by mail.</summary>
/// <param name="Every">Between two looks into the mailbox.</param>
internal sealed record ReplyPlan(ReplyMailbox Mailbox, Duration Every);
