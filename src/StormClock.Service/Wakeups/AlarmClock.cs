using Quartz;

namespace StormClock.Service.Wakeups;

/// <summary>
/// Sets the one wake-up trigger. The truth is in the store: a lost trigger costs at most one listening interval.
/// </summary>
public sealed class AlarmClock(ISchedulerFactory schedulers, IClock clock)
{
    public static readonly JobKey Wake = new("wake");
    public static readonly JobKey Listen = new("listen");
    public static readonly JobKey Replies = new("replies");
    public static readonly TriggerKey ListenTrigger = new("listen");
    public static readonly TriggerKey WakeTrigger = new("wake");

    /// <summary>Replaces the wake-up; null takes it away. One that is due already keeps its turn, which sets the next.</summary>
    public async Task SetAsync(Instant? at, CancellationToken cancellation)
    {
        var scheduler = await schedulers.GetScheduler(cancellation);
        if (await scheduler.GetTrigger(WakeTrigger, cancellation) is { NextFireTimeUtc: { } due } && due <= clock.GetCurrentInstant().ToDateTimeOffset()) return;
        if (at is not { } when)
        {
            await scheduler.UnscheduleJob(WakeTrigger, cancellation);
            return;
        }

        // Never in the past: a due moment that cannot be served now must not become a tight loop.
        var soonest = Instant.Max(when, clock.GetCurrentInstant() + Duration.FromSeconds(1));

        // One that was slept through simply fires late. The policies that move it would take "now" from the system's clock.
        var trigger = TriggerBuilder.Create()
            .WithIdentity(WakeTrigger)
            .ForJob(Wake)
            .StartAt(soonest.ToDateTimeOffset())
            .WithSimpleSchedule(schedule => schedule.WithMisfireInstruction(SimpleTriggerMisfireInstruction.IgnoreMisfires))
            .Build();
        if (await scheduler.RescheduleJob(WakeTrigger, trigger, cancellation) is null) await scheduler.ScheduleJob(trigger, cancellationToken: cancellation);
    }
}
