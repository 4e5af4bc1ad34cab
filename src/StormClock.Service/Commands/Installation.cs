using StormClock.Core.Formats.Feeds;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Recording;
using StormClock.Service.Feeds.Signatures;
using StormClock.Service.Feeds.Web;
using StormClock.Service.Replies;
using StormClock.Service.Settings;
using StormClock.Service.Store;

namespace StormClock.Service.Commands;

/// <summary>One installation as its files describe it.</summary>
internal sealed record Installation(string ConfigFolder, StormSettings Settings)
{
    public string GardensFolder => GardensIn(ConfigFolder);

    /// <summary>Notes made with the <c>note</c> command wait here for the service.</summary>
    public string NotesFolder => Path.Combine(Settings.DataFolder, "notes");

    public static string SettingsFileIn(string configFolder) => Path.Combine(configFolder, "stormclock.yaml");

    public static string GardensIn(string configFolder) => Path.Combine(configFolder, "gardens");

    /// <summary>Named sets of feeds.</summary>
    public static string PresetsIn(string configFolder) => Path.Combine(configFolder, "feeds");

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
            mail.Host, mail.Port, Security(mail.Security), new(mail.FromName, mail.From, Settings.Replies?.Address),
            Duration.FromSeconds(30), CheckRevocation: false, mail.User, password, null, mail.TrustedCertificateFile);
        foreach (var fault in email.Faults()) inputs.Fault($"{SettingsFileIn(ConfigFolder)}: mail: {fault}");
        return email.Faults().Count == 0 ? new SmtpChannel(email) : null;
    }

    /// <summary>The mailbox for answers; null when none is set, or, with the fault noted, when its password is not to be had.</summary>
    public ReplyPlan? Replies(Inputs inputs)
    {
        if (Settings.Replies is not { } replies) return null;

        var secret = MailPassword.Find(replies, Environment.GetEnvironmentVariable);
        inputs.Add(SettingsFileIn(ConfigFolder), secret.Faults);
        return secret.Value is { } found
            ? new(
                new(
                    replies.Host, replies.Port, Security(replies.Security), replies.User, found.Reveal(), replies.Folder, replies.MoveTo,
                    Duration.FromSeconds(30), replies.TrustedCertificateFile),
                replies.Every)
            : null;
    }

    private static EmailSecurity Security(MailSecurity security) => security == MailSecurity.Tls ? EmailSecurity.Tls : EmailSecurity.StartTls;

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

    /// <summary>The feeds of the settings with their presets unfolded for the gardens; null, with the faults noted, when that cannot be.</summary>
    public IReadOnlyList<FeedSettings>? FeedSettings(Inputs inputs)
    {
        var feeds = FeedPresets.Expand(Settings.Feeds, PresetsIn(ConfigFolder), GardenFiles.Served(GardenFiles.Load(GardensFolder)));
        inputs.Add(SettingsFileIn(ConfigFolder), feeds.Faults);
        foreach (var file in (feeds.Value ?? []).Select(feed => feed.SignedBy).OfType<SignerFile>().Distinct()) inputs.Add(SettingsFileIn(ConfigFolder), FeedSigners.Load(file).Faults);
        return feeds.Value;
    }

    /// <summary>Everything listened to: the feeds given, and the notes made by hand.</summary>
    public IReadOnlyList<IFeed> Feeds(IReadOnlyList<FeedSettings> settings, StormStore store, TimeProvider time, IClock clock, GardenPlaces places, string? recordFolder)
    {
        var recorder = recordFolder is null ? null : new AnswerRecorder(recordFolder, time, Console.Error.WriteLine);
        var client = new FeedClient(FeedHttp.Make(), time, FetchLimits.Usual, recorder);
        return [.. settings.Select(Make), new FolderFeed(FeedsReader.Notes, Directory.CreateDirectory(NotesFolder).FullName)];

        IFeed Make(FeedSettings feed)
        {
            var signers = feed.SignedBy is { } file ? FeedSigners.Load(file).Value ?? throw new IOException($"{file.Path} can no longer be read") : null;
            var source = new FeedSource(feed.Name, feed.Pace, feed.Hosts, feed.Contact, feed.StaleAfter) { Signers = signers };
            return feed.Kind switch
            {
                FeedKind.Folder => new FolderFeed(feed.Name, feed.At, feed.Pace, recorder) { Signers = signers },
                FeedKind.List => new ListFeed(source, new(feed.At), client, FeedIndexReader.Read, new SeenEntries(store, feed.Name), places),
                _ when feed.Follow.Count > 0 => new FollowedFeed(source, new(feed.At), feed.Follow, client, clock),
                _ => new MessageFeed(source, new(feed.At), client),
            };
        }
    }
}
