using System.Globalization;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Units;
using StormClock.Core.Water;
using StormClock.Service.Books;
using StormClock.Service.Settings;

namespace StormClock.Service.Commands;

/// <summary>What <c>check</c> says about the files of an installation. Making it touches nothing.</summary>
/// <param name="Faults">Every fault as <c>file:line: what is wrong and the mend</c>, in order of files and lines.</param>
/// <param name="Would">What the service would do with the files that are good.</param>
public sealed record CheckReport(IReadOnlyList<string> Faults, IReadOnlyList<string> Would)
{
    public bool IsGood => Faults.Count == 0;

    /// <param name="settingsFile">Path as the keeper would write it.</param>
    /// <param name="today">Surveys grow old.</param>
    /// <param name="level">A water level to hold against the gardens; null for none.</param>
    public static CheckReport Of(string settingsFile, ReadResult<StormSettings> settings, IReadOnlyList<GardenFile> gardens, LocalDate today, WaterLevel? level = null)
    {
        var faults = settings.Faults.Select(fault => fault.ToldOf(settingsFile))
            .Concat(gardens.SelectMany(garden => garden.Read.Faults.Select(fault => fault.ToldOf(garden.File))));
        if (settings.Value is { } read) faults = faults.Concat(Strangers(read, gardens).Select(fault => fault.ToldOf(settingsFile)));
        var would = (settings.Value is { } good ? Settings(settingsFile, good) : [])
            .Concat(gardens.SelectMany(garden => garden.Read.Value is { } book ? Garden(garden.File, book, today, level) : []))
            .Concat(gardens.Count == 0 ? ["no garden books: nothing would be planned"] : []);
        return new CheckReport([.. faults], [.. would]);
    }

    /// <summary>Of a whole installation.</summary>
    public static CheckReport OfFolder(string folder, Instant now)
    {
        var gardens = GardenFiles.Load(Installation.GardensIn(folder));
        var settings = SettingsFile.Load(Installation.SettingsFileIn(folder), Installation.PresetsIn(folder), GardenFiles.Served(gardens));
        return Of(Installation.SettingsFileIn(folder), settings, gardens, now.InUtc().Date);
    }

    private static IEnumerable<string> Settings(string file, StormSettings settings)
    {
        yield return $"settings ({file})";
        yield return settings.Mail is { } mail
            ? $"  mail from {mail.From} through {mail.Host}:{mail.Port} ({(mail.Security == MailSecurity.Tls ? "tls" : "starttls")}, {Login(mail.User, mail.PasswordVariable, mail.PasswordFile)})"
            : "  no mail settings: messages are written as .eml files";
        yield return $"  pages are served at {settings.Pages.Listen}";
        yield return settings.Pages.PhonesCanReach
            ? $"  links in messages begin with {settings.Pages.Address}"
            : "  no address that phones can reach: messages carry no links";
        if (!settings.Pages.PhonesCanReach && settings.Replies is null) yield return "  no mailbox for answers either ('replies'): work is marked on the box's own page";
        if (settings.Replies is { } replies)
            yield return $"  answers by mail to {replies.Address} are read from the folder {replies.Folder} at {replies.Host}:{replies.Port} ({(replies.Security == MailSecurity.Tls ? "tls" : "starttls")}, {Login(replies.User, replies.PasswordVariable, replies.PasswordFile)}) every {Minutes(replies.Every)}, then {(replies.MoveTo is { } other ? $"moved to {other}" : "marked as read")}";
        yield return settings.Pages is { PhonesCanReach: true, Address.Scheme: "https" }
            ? "  people may turn on notifications by a link in their mail"
            : "  no https address that phones can reach: no notifications, mail alone";
        foreach (var webhook in settings.Webhooks) yield return $"  messages of {webhook.Person} are also posted to {webhook.Url.Host}, signed with the secret from {(webhook.SecretVariable is { } name ? $"the variable {name}" : $"the file {webhook.SecretFile}")}";
        yield return settings.Heartbeat is { } heartbeat
            ? $"  a sign of life is sent to {heartbeat.Url.Host} every {Minutes(heartbeat.Every)}"
            : "  no heartbeat: nobody outside is told when this box falls silent";
        yield return $"  state is kept in {settings.DataFolder}";
        foreach (var feed in settings.Feeds) yield return $"  feed {feed.Name}: {Way(feed)}, looked at every {Minutes(feed.Pace.Calm)}, every {Minutes(feed.Pace.Storm)} in a storm{Asked(feed)}{(feed.SignedBy is { } signer ? $", signed by a certificate in {signer.Path}" : "")}";
        if (settings.Feeds.Count == 0) yield return "  no feeds: nothing is heard of any forecast unless it is entered by hand";
        if (settings.QuietHours is { } quiet) yield return $"  quiet from {Clock(quiet.From)} to {Clock(quiet.To)} ({quiet.Zone.Id}), urgent messages apart";
    }

    private static string Way(FeedSettings feed) => feed.Kind switch
    {
        FeedKind.Folder => $"folder {feed.At}",
        FeedKind.List => $"list {feed.At}",
        FeedKind.Preset => "preset, not unfolded here",
        _ => feed.At,
    };

    private static string Asked(FeedSettings feed) => feed switch
    {
        { Kind: FeedKind.Folder } => "",
        { Contact: { } contact } => $", as {contact}",
        _ => ", without a contact; the offices like to know whom to write to",
    };

    /// <summary>Webhooks of nobody; a book with faults may hold anybody.</summary>
    private static IEnumerable<ReadFault> Strangers(StormSettings settings, IReadOnlyList<GardenFile> gardens)
    {
        if (gardens.Any(garden => garden.Read.Value is null)) return [];

        var people = gardens.SelectMany(garden => garden.Read.Value!.People.Select(person => $"{garden.Read.Value.Id}/{person.Id}")).ToList();
        return settings.Webhooks.Where(webhook => !people.Contains(webhook.Person))
            .Select(webhook => ReadFault.At(webhook.Line, $"no garden book has the person '{webhook.Person}' of a webhook; {(people.Count == 0 ? "there is nobody yet" : $"known: {string.Join(", ", people)}")}"));
    }

    private static string Login(string? user, string? passwordVariable, string? passwordFile) => (user, passwordVariable) switch
    {
        (null, _) => "no login",
        (_, { } name) => $"user {user}, password from the variable {name}",
        _ => $"user {user}, password from the file {passwordFile}",
    };

    private static IEnumerable<string> Garden(string file, GardenBook book, LocalDate today, WaterLevel? level)
    {
        yield return $"garden {book.Name} ({file})";
        yield return $"  id {book.Id}, times in {book.Zone.Id}{(book.Practice ? "; practice: rehearsed, never served or mailed for" : "")}";
        foreach (var site in book.Sites) yield return $"  site {site.Name}: {Place(site.At)}, {Spoken(Tokens.Of(site.Terrain))}{Codes(site)}{Travel(book, site)}";
        foreach (var line in CodesReport.Of(book)) yield return line;
        foreach (var (workClass, limit) in book.Limits.OrderBy(pair => pair.Key)) yield return $"  {Tokens.Of(workClass)} work stops at {Limit(limit, book.Units)}{Loosened(workClass, limit)}";
        foreach (var person in book.People) yield return $"  {person.Name}, {Tokens.Of(person.Role)}: {person.Email ?? "no address, gets no messages"}{(person.SecondEmail is { } second ? $"; late work that nobody answers also to {second}" : "")}{(person is { Role: PersonRole.Keeper, Email: not null } ? "; once a week in the storm season that the box listens" : "")}";
        yield return $"  {Work(book)}";
        foreach (var line in WorryReport.Of(book, today)) yield return line;
        if (WaterReport.Tanks(book).ToList() is { Count: > 0 } tanks)
        {
            yield return "  tanks";
            foreach (var line in tanks) yield return line;
        }

        if (level is null) yield break;
        foreach (var line in WaterReport.Of(book, level)) yield return line;
    }

    private static string Place(GeoPoint at) =>
        $"{Math.Abs(at.LatDeg).ToString("0.000", CultureInfo.InvariantCulture)} {(at.LatDeg < 0 ? "S" : "N")}, {Math.Abs(at.LonDeg).ToString("0.000", CultureInfo.InvariantCulture)} {(at.LonDeg < 0 ? "W" : "E")}";

    private static string Codes(Site site) => site.Codes.Count > 0 ? $", alerts by area and code {string.Join(", ", site.Codes)}" : ", alerts by area only";

    private static string Travel(GardenBook book, Site site) =>
        string.Concat(book.Sites.Where(other => site.TravelMinutes.ContainsKey(other.Id)).Select(other => $", {site.TravelMinutes[other.Id]} min to {other.Name}"));

    /// <summary>Knots, because forecasts speak them, and what the garden's people read.</summary>
    private static string Limit(WorkLimit limit, UnitSystem units)
    {
        var knots = $"{Whole(limit.SustainedMps / Wind.MpsPerKt)} kt sustained or {Whole(limit.GustMps / Wind.MpsPerKt)} kt gust";
        return units switch
        {
            UnitSystem.UsCustomary => $"{knots} ({Whole(limit.SustainedMps / Wind.MpsPerMph)} / {Whole(limit.GustMps / Wind.MpsPerMph)} mph)",
            UnitSystem.Metric => $"{knots} ({Whole(limit.SustainedMps * 3.6)} / {Whole(limit.GustMps * 3.6)} km/h)",
            _ => knots,
        };
    }

    private static string Loosened(WorkClass workClass, WorkLimit limit)
    {
        var usual = WorkLimit.Defaults[workClass];
        return limit.SustainedMps > usual.SustainedMps || limit.GustMps > usual.GustMps ? ", which is more wind than usual" : "";
    }

    private static string Work(GardenBook book)
    {
        var byPeople = book.Jobs.GroupBy(job => job.People).OrderBy(same => same.Key).Select(same => $"{same.Sum(job => job.Minutes)} min for {(same.Key == 1 ? "one person" : $"{same.Key} people")}");
        var jobs = book.Jobs.Count();
        var items = Counted(book.Items.Count, "item");
        return jobs == 0 ? $"{items} and no jobs" : $"{items}, {Counted(jobs, "job")}: {string.Join(", ", byPeople)}";
    }

    private static string Counted(int count, string what) => $"{count} {what}{(count == 1 ? "" : "s")}";

    private static string Spoken(string token) => token.Replace('_', ' ');

    private static string Minutes(Duration every) => every == Duration.FromMinutes(1) ? "minute" : $"{every.TotalMinutes:0} minutes";

    private static string Clock(LocalTime time) => time.ToString("H:mm", CultureInfo.InvariantCulture);

    private static string Whole(double number) => number.ToString("0", CultureInfo.InvariantCulture);
}
