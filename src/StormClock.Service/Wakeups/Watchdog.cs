using Quartz;

namespace StormClock.Service.Wakeups;

/// <summary>
/// The scheduler waits for an hour of the clock. When that is set back, the hour comes again only after as long, and nobody would
/// be heard or told until then. A timer does not care about the clock: it sees a look that lies too far ahead, and has it taken now.
/// </summary>
internal sealed class Watchdog(ISchedulerFactory schedulers, HostPlan plan, IClock clock) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(plan.ListenEvery.ToTimeSpan(), plan.Time);
        while (await timer.WaitForNextTickAsync(stoppingToken)) await LookAsync(stoppingToken);
    }

    private async Task LookAsync(CancellationToken cancellation)
    {
        var scheduler = await schedulers.GetScheduler(cancellation);
        if (await scheduler.GetTrigger(AlarmClock.ListenTrigger, cancellation) is not { NextFireTimeUtc: { } next } trigger) return;

        // Read after the trigger, so that a clock that only goes forward never makes its hour look too far ahead.
        var now = clock.GetCurrentInstant();
        if (Instant.FromDateTimeOffset(next) <= now + plan.ListenEvery) return;
        await scheduler.RescheduleJob(AlarmClock.ListenTrigger, trigger.GetTriggerBuilder().StartAt(now.ToDateTimeOffset()).Build(), cancellation);
    }
}
