using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Feeds;
using StormClock.Service.Settings;

namespace StormClock.Service.Commands;

/// <summary>One installation as its files describe it.</summary>
internal sealed record Installation(string ConfigFolder, StormSettings Settings)
{
    public string GardensFolder => Path.Combine(ConfigFolder, "gardens");

    /// <summary>Notes made with the <c>note</c> command wait here for the service.</summary>
    public string NotesFolder => Path.Combine(Settings.DataFolder, "notes");

    private static string SettingsFileIn(string configFolder) => Path.Combine(configFolder, "stormclock.yaml");

    /// <summary>Reads the settings; null, with the faults noted, when they cannot be used.</summary>
    public static Installation? Load(Inputs inputs, string? configFolder, string? dataFolder)
    {
        inputs.GivenFolder(configFolder, "--config");
        inputs.WritableFolder(dataFolder, "--data");
        var folder = Commands.ConfigFolder.Find(configFolder);
        var file = SettingsFileIn(folder);
        var read = SettingsFile.Load(file);
        inputs.Add(file, read.Faults);
        if (read.Value is not { } settings) return null;
        if (dataFolder is null) inputs.WritableFolder(settings.DataFolder, $"{file}: data_folder");
        return new(folder, dataFolder is null ? settings : settings with { DataFolder = dataFolder });
    }

    /// <summary>The mail server, or the folder of .eml files when none is set; null, with the fault noted, when its password is not to be had.</summary>
    public IChannel? Channel(Inputs inputs)
    {
        if (Settings.Mail is not { } mail) return new EmlChannel(Path.Combine(Settings.DataFolder, "outgoing"), new("StormClock", "stormclock@stormclock.invalid"));

        string? password = null;
        if (mail.User is not null)
        {
            var secret = MailPassword.Find(mail, Environment.GetEnvironmentVariable);
            inputs.Add(SettingsFileIn(ConfigFolder), secret.Faults);
            if (secret.Value is null) return null;
            password = secret.Value.Reveal();
        }

        var email = new EmailSettings(
            mail.Host, mail.Port, mail.Security == MailSecurity.Tls ? EmailSecurity.Tls : EmailSecurity.StartTls, new(mail.FromName, mail.From),
            Duration.FromSeconds(30), CheckRevocation: false, mail.User, password, null, mail.TrustedCertificateFile);
        foreach (var fault in email.Faults()) inputs.Fault($"{SettingsFileIn(ConfigFolder)}: mail: {fault}");
        return email.Faults().Count == 0 ? new SmtpChannel(email) : null;
    }

    /// <summary>Browsers subscribe on pages reached by https only; null where there are none.</summary>
    public PushPlan? Push => Settings.Pages is { PhonesCanReach: true, Address: { Scheme: "https" } address }
        ? new(Settings.Mail is { } mail ? $"mailto:{mail.From}" : address.AbsoluteUri)
        : null;

    /// <summary>The webhooks with their secrets; those whose secret is not to be had are left out, with the fault noted.</summary>
    public IReadOnlyDictionary<string, WebhookTarget> Webhooks(Inputs inputs)
    {
        var targets = new Dictionary<string, WebhookTarget>();
        foreach (var webhook in Settings.Webhooks)
        {
            var secret = WebhookSecret.Find(webhook, Environment.GetEnvironmentVariable);
            inputs.Add(SettingsFileIn(ConfigFolder), secret.Faults);
            if (secret.Value is { } found) targets.Add(webhook.Person, new(webhook.Url, System.Text.Encoding.UTF8.GetBytes(found.Reveal())));
        }

        return targets;
    }

    /// <summary>Everything listened to: the feeds of the settings, and the notes made by hand.</summary>
    public IReadOnlyList<IFeed> Feeds(TimeProvider time, IClock clock, string? recordFolder)
    {
        var client = new HttpClient(new SocketsHttpHandler { AutomaticDecompression = System.Net.DecompressionMethods.All, AllowAutoRedirect = false, PooledConnectionLifetime = TimeSpan.FromMinutes(15) });
        client.DefaultRequestHeaders.UserAgent.ParseAdd("StormClock/0.1");
        var feeds = Settings.Feeds.Select(feed => feed.Kind == FeedKind.Folder
            ? (IFeed)new FolderFeed(feed.Name, feed.At)
            : new UrlFeed(feed.Name, new(feed.At), client, time));
        if (recordFolder is not null) feeds = feeds.Select(feed => new RecordingFeed(feed, recordFolder, time));
        var paced = feeds.Select(feed => new PacedFeed(feed, Settings.PollEvery, clock));
        return [.. paced, new FolderFeed("notes", Directory.CreateDirectory(NotesFolder).FullName)];
    }
}
