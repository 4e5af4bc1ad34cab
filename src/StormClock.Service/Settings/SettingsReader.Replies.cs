using StormClock.Service.Books;

namespace StormClock.Service.Settings;

/// <summary>The mailbox for answers.</summary>
public sealed partial class SettingsReader
{
    private static ReplySettings? Replies(YamlFields top)
    {
        if (top.Map("replies", "replies", [.. SettingsKeys.Replies, MisplacedPassword], "{host: mail.example.org, port: 993, security: tls, user: garden, password_env: STORMCLOCK_MAIL_PASSWORD, address: garden@example.org}") is not { } fields) return null;

        var replies = new ReplySettings(
            fields.Text("host", "mail.example.org"),
            fields.Whole("port", 1, 65535, null, "993"),
            fields.Choice<MailSecurity>("security", Securities, null),
            fields.Text("user", "garden"),
            fields.OptionalText("password_file", "/etc/stormclock/mail-password"),
            fields.OptionalText("password_env", "STORMCLOCK_MAIL_PASSWORD"),
            Address(fields, "address"),
            fields.OptionalText("folder", "INBOX") ?? "INBOX",
            fields.OptionalText("move_to", "Answers"),
            Duration.FromMinutes(fields.Whole("poll_minutes", 1, 60, 2, "2")),
            fields.OptionalText("trusted_certificate_file", "/etc/stormclock/mail.pem"));
        CheckPassword(fields);
        if (!top.Has("mail")) top.Fault("replies", "answer messages that are mailed; add mail, or take replies out");
        if (replies.MoveTo == replies.Folder) fields.Fault("move_to", "must be another folder than 'folder'; take it out to leave answers where they are");
        return replies;
    }
}
