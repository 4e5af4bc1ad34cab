using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Commands;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Keeper;

namespace StormClock.Service.Web.Keeper;

/// <summary>The keeper's page: how the installation is doing, and what only its keeper may do.</summary>
internal sealed class KeeperEndpoints(
    HostPlan plan, StormStore store, IJobBook book, DayLog log, PasscodeFile passcode, Backup backup, IClock clock, KeeperDoor door)
{
    /// <summary>More than anybody reads on a page.</summary>
    private const int MostLines = 200;

    private const int MostLetters = 50;

    public async Task<IResult> ShowAsync(HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        return await PageAsync(context, null);
    }

    public async Task<IResult> SetPasscodeAsync(HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is not { } form) return Notices.FormStale(context.Request);
        var (fresh, again) = (form["fresh"].ToString(), form["again"].ToString());
        if (!PasscodeFile.IsGood(fresh)) return await PageAsync(context, "keeper.passcode.short");
        if (fresh != again) return await PageAsync(context, "keeper.passcode.differ");
        passcode.Set(fresh);

        // Whoever sat at the open box must come in by it now, too.
        context.Response.Headers.Location = "../in";
        return TypedResults.StatusCode(StatusCodes.Status303SeeOther);
    }

    public async Task<IResult> TestAsync(HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is not { } form) return Notices.FormStale(context.Request);
        return form["to"].ToString().Split('/') is [var garden, var person] && await book.SendTestAsync(garden, person, clock.GetCurrentInstant()) is { } sent
            ? Notices.Tested(context.Request, sent)
            : Notices.FormUnread(context.Request);
    }

    public async Task<IResult> BackupAsync(HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        var name = $"stormclock-{clock.GetCurrentInstant().InUtc().Date.ToString("uuuu-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}.zip";
        return TypedResults.File(await backup.MakeAsync(context.RequestAborted), "application/zip", name);
    }

    private async Task<RazorComponentResult<KeeperView>> PageAsync(HttpContext context, string? said)
    {
        var now = clock.GetCurrentInstant();
        var (waiting, parked) = store.Read(reader => (
            OutboxTable.InState(reader, OutboxState.Waiting).Concat(OutboxTable.InState(reader, OutboxState.Claimed)).OrderBy(entry => entry.Moment).Take(MostLetters).ToList(),
            OutboxTable.InState(reader, OutboxState.Refused).OrderByDescending(entry => entry.Settled).Take(MostLetters).ToList()));
        return new(new Dictionary<string, object?>
        {
            [nameof(KeeperView.Speech)] = BrowserSpeech.Of(context.Request),
            [nameof(KeeperView.Up)] = Ways.Up(context.Request),
            [nameof(KeeperView.Said)] = said,
            [nameof(KeeperView.Now)] = now,
            [nameof(KeeperView.Health)] = await book.HealthAsync(now),
            [nameof(KeeperView.Waiting)] = waiting,
            [nameof(KeeperView.Parked)] = parked,
            [nameof(KeeperView.Books)] = plan.Gardens.Books,
            [nameof(KeeperView.HasPasscode)] = passcode.IsSet,
            [nameof(KeeperView.Check)] = plan.ConfigFolder is { } folder ? CheckReport.OfFolder(folder, now) : null,
            [nameof(KeeperView.Log)] = log.Newest(MostLines),
        });
    }
}
