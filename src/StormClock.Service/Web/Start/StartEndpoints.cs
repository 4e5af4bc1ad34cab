using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Commands;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Settings;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Garden;
using StormClock.Service.Web.Keeper;
using StormClock.Service.Web.Views.Start;

namespace StormClock.Service.Web.Start;

/// <summary>The first run: a garden from one page, then mail; or the practice storm first. For the keeper alone, also for a second garden later.</summary>
internal sealed class StartEndpoints(HostPlan plan, BookDesk books, PracticeRun practice, KeeperDoor door, IClock clock)
{
    /// <summary>Shown again when a server takes nothing; the password is not.</summary>
    private static readonly string[] MailFields = ["host", "port", "security", "user", "from", "to"];

    public IResult Show(HttpContext context) => Refuse(context) ?? Page(context, new Dictionary<string, string>(), []);

    public async Task<IResult> MakeAsync(HttpContext context)
    {
        if (Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is not { } form) return Notices.FormStale(context.Request);
        var typed = StartForm.Typed(form);
        var read = StartForm.Read(typed);
        if (read.Value is not { } book) return Page(context, typed, [.. read.Faults.Select(fault => fault.Reason)]);

        var made = await books.CreateAsync(book);
        return made.Value is { } garden ? GardenDoor.See(context, $"start/mail?garden={garden.Id}") : Page(context, typed, [.. made.Faults.Select(fault => fault.Reason)]);
    }

    public IResult Mail(HttpContext context) => Refuse(context) ?? MailPage(context, new Dictionary<string, string>(), null);

    /// <summary>One letter to the gardener first: only a server that takes it is written into the settings.</summary>
    public async Task<IResult> TryMailAsync(HttpContext context)
    {
        if (Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is not { } form) return Notices.FormStale(context.Request);
        var typed = MailFields.ToDictionary(key => key, key => EntryForm.Line(form[key].ToString()));
        var speech = BrowserSpeech.Of(context.Request);
        if (plan.ConfigFolder is not { } config) return MailPage(context, typed, speech.Say("start.mail.no-files"));
        if (!int.TryParse(typed["port"], NumberStyles.None, CultureInfo.InvariantCulture, out var port)) return MailPage(context, typed, speech.Say("start.mail.port"));

        var (security, user, password) = (typed["security"] == "tls" ? MailSecurity.Tls : MailSecurity.StartTls, typed["user"] is { Length: > 0 } given ? given : null, form["password"].ToString());
        var email = new EmailSettings(typed["host"], port, security == MailSecurity.Tls ? EmailSecurity.Tls : EmailSecurity.StartTls, new("StormClock", typed["from"], null), Duration.FromSeconds(20), CheckRevocation: false, user, user is null ? null : password, null, null);
        if (email.Faults() is { Count: > 0 } faults) return MailPage(context, typed, string.Join("; ", faults));
        if (Person(typed["to"]) is not { } person) return MailPage(context, typed, speech.Say("start.mail.nobody"));

        var channel = new SmtpChannel(email);
        var outcome = await channel.SendAsync(TestMessage.To(person, null, clock.GetCurrentInstant()), context.RequestAborted);
        await channel.RestAsync();
        if (outcome.Result != DeliveryResult.Delivered) return MailPage(context, typed, speech.Say("start.mail.not-taken", ("detail", outcome.Detail ?? "")));

        var passwordFile = user is null ? null : Path.GetFullPath(Path.Combine(plan.DataFolder, MailSection.PasswordFile));
        if (passwordFile is not null) SecretFile.Replace(passwordFile, System.Text.Encoding.UTF8.GetBytes(password + "\n"));
        var written = MailSection.Add(Installation.SettingsFileIn(config), typed["host"], port, security, user, passwordFile, typed["from"]);
        return written.IsGood ? MailPage(context, typed, speech.Say("start.mail.done", ("address", person.Email!)), done: true) : MailPage(context, typed, string.Join("; ", written.Faults.Select(fault => fault.Reason)));
    }

    public IResult Practice(HttpContext context) => Refuse(context) ?? new RazorComponentResult<PracticeView>(new Dictionary<string, object?>
    {
        [nameof(PracticeView.Speech)] = BrowserSpeech.Of(context.Request),
        [nameof(PracticeView.IsRunning)] = practice.IsRunning,
        [nameof(PracticeView.Events)] = practice.Events,
        [nameof(PracticeView.Letters)] = practice.IsRunning ? [] : practice.Letters,
    });

    public async Task<IResult> BeginPracticeAsync(HttpContext context)
    {
        if (Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is null) return Notices.FormStale(context.Request);
        practice.Begin();
        return GardenDoor.See(context, "practice");
    }

    private Core.Garden.Person? Person(string to) => to.Split('/') is [var garden, var id] ? plan.Gardens.Find(garden)?.People.FirstOrDefault(person => person.Id == id && person.Email is not null) : null;

    /// <summary>Null for the keeper, where there is a folder to put a garden into.</summary>
    private IResult? Refuse(HttpContext context) => door.Refuse(context) ?? (plan.Gardens.Folder is null ? Notices.NotForYou(context.Request) : null);

    private RazorComponentResult<StartView> Page(HttpContext context, IReadOnlyDictionary<string, string> typed, IReadOnlyList<string> faults) => new(new Dictionary<string, object?>
    {
        [nameof(StartView.Speech)] = BrowserSpeech.Of(context.Request),
        [nameof(StartView.Typed)] = typed,
        [nameof(StartView.Faults)] = faults,
        [nameof(StartView.MayPractise)] = practice.IsOffered,
        [nameof(StartView.HasGardens)] = plan.Gardens.Books.Count > 0,
    });

    private RazorComponentResult<MailView> MailPage(HttpContext context, IReadOnlyDictionary<string, string> typed, string? said, bool done = false)
    {
        var garden = context.Request.Query["garden"].ToString() is { Length: > 0 } named && plan.Gardens.Find(named) is { } found ? found : plan.Gardens.Books.Count > 0 ? plan.Gardens.Books[^1] : null;
        return new(new Dictionary<string, object?>
        {
            [nameof(MailView.Speech)] = BrowserSpeech.Of(context.Request),
            [nameof(MailView.Typed)] = typed,
            [nameof(MailView.Said)] = said,
            [nameof(MailView.IsDone)] = done,
            [nameof(MailView.HasServer)] = plan.Channel is SmtpChannel,
            [nameof(MailView.Garden)] = garden,
        });
    }
}
