using System.Globalization;
using System.Net;
using StormClock.Core;
using StormClock.Core.Reminders;
using StormClock.Service.Books;
using StormClock.Service.Feeds;

namespace StormClock.Service.Settings;

/// <summary>Reads the settings file; all faults at once, each with its line and the mend. No fault repeats a value that could be a secret.</summary>
public sealed partial class SettingsReader
{
    /// <summary>Refused with a reason of its own, so it is not called unknown.</summary>
    private const string MisplacedPassword = "password";

    private static readonly Dictionary<string, MailSecurity> Securities = new() { ["starttls"] = MailSecurity.StartTls, ["tls"] = MailSecurity.Tls };

    private readonly FaultList faults = new();

    public static ReadResult<StormSettings> Read(string yamlText) => new SettingsReader().Settings(yamlText);

    private ReadResult<StormSettings> Settings(string yamlText)
    {
        if (yamlText.AsSpan().Trim('\uFEFF').IsWhiteSpace() || OnlyRemarks(yamlText)) return StormSettings.Defaults;
        if (YamlTreeReader.Read(yamlText, faults) is not { } tree) return ReadResult.Bad<StormSettings>(faults.InOrder());

        var top = new YamlFields(tree, "the settings", SettingsKeys.All, faults);
        var usual = StormSettings.Defaults;
        var contact = FeedsReader.Contact(top);
        var settings = new StormSettings(
            Mail(top),
            Pages(top),
            top.OptionalText("data_folder", "data") ?? usual.DataFolder,
            FeedsReader.Read(top, FeedsReader.Pace(top, FeedPace.Usual), contact),
            Quiet(top))
        {
            Webhooks = Webhooks(top),
            Replies = Replies(top),
            Heartbeat = Heartbeat(top),
        };
        return faults.Any ? ReadResult.Bad<StormSettings>(faults.InOrder()) : settings;
    }

    private static bool OnlyRemarks(string text) => text.Split('\n').All(line => line.Trim() is "" or ['#', ..]);

    private static MailSettings? Mail(YamlFields top)
    {
        if (top.Map("mail", "mail", [.. SettingsKeys.Mail, MisplacedPassword], "{host: mail.example.org, port: 587, security: starttls, from: garden@example.org}") is not { } fields) return null;

        var mail = new MailSettings(
            fields.Text("host", "mail.example.org"),
            fields.Whole("port", 1, 65535, null, "587"),
            fields.Choice<MailSecurity>("security", Securities, null),
            fields.OptionalText("user", "garden"),
            fields.OptionalText("password_file", "/etc/stormclock/mail-password"),
            fields.OptionalText("password_env", "STORMCLOCK_MAIL_PASSWORD"),
            Address(fields, "from"),
            fields.OptionalText("from_name", "StormClock") ?? "StormClock",
            fields.OptionalText("trusted_certificate_file", "/etc/stormclock/mail.pem"));
        CheckPassword(fields);
        return mail;
    }

    private static void CheckPassword(YamlFields fields)
    {
        if (fields.Has(MisplacedPassword))
            fields.Fault(MisplacedPassword, "must not be written into this file; put it into a file of its own and name that under password_file, or name a variable under password_env");

        var given = (fields.Has("password_file") ? 1 : 0) + (fields.Has("password_env") ? 1 : 0);
        if (given == 2) fields.Fault("password_env", "and password_file are both given; keep one");
        if (fields.Has("user") && given == 0 && !fields.Has(MisplacedPassword)) fields.Fault("user", "needs a password; add password_file or password_env");
        if (!fields.Has("user") && given > 0) fields.Fault(fields.Has("password_file") ? "password_file" : "password_env", "is of no use without 'user'; add user, or take it out");
    }

    private static string Address(YamlFields fields, string key)
    {
        var address = fields.Text(key, "garden@example.org");
        if (address.Length > 0 && !EmailAddress.IsPlain(address)) fields.Fault(key, $"must be one plain address such as garden@example.org, not '{YamlFields.Shown(address)}'");
        return address;
    }

    private static ListenSettings Pages(YamlFields top) =>
        top.Map("pages", "pages", SettingsKeys.Pages, "{listen: \"127.0.0.1:8427\"}") is { } fields
            ? new ListenSettings(Listen(fields), PublicAddress(fields))
            : ListenSettings.Defaults;

    private static IPEndPoint Listen(YamlFields fields)
    {
        var usual = ListenSettings.Defaults.Listen;
        if (fields.OptionalText("listen", "\"127.0.0.1:8427\"") is not { Length: > 0 } text) return usual;

        var colon = text.LastIndexOf(':');
        var hasPort = colon > 0 && int.TryParse(text[(colon + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port is >= 0 and <= 65535;
        if (hasPort && IPEndPoint.TryParse(text, out var listen)) return listen;

        fields.Fault("listen", $"must be an address of this box with a port, not '{YamlFields.Shown(text)}'; write e.g. \"127.0.0.1:8427\", or \"0.0.0.0:8427\" for the whole house");
        return usual;
    }

    private static Uri? PublicAddress(YamlFields fields)
    {
        if (fields.OptionalText("address", "https://garden.example.org") is not { Length: > 0 } text) return null;
        if (Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https" && address is { UserInfo: "", Query: "", Fragment: "" }) return address;

        fields.Fault("address", "must be what a phone would open, beginning with https:// or http://; write e.g. address: https://garden.example.org");
        return null;
    }

    private static QuietHours? Quiet(YamlFields top)
    {
        if (top.Map("quiet_hours", "quiet_hours", SettingsKeys.QuietHours, "{from: \"21:30\", to: \"6:30\", zone: America/New_York}") is not { } fields) return null;

        var quiet = new QuietHours(fields.Time("from", "\"21:30\""), fields.Time("to", "\"6:30\""), fields.Zone("zone"));
        if (quiet.From == quiet.To && fields.Has("from") && fields.Has("to")) fields.Fault("to", "must differ from 'from'");
        return quiet;
    }
}
