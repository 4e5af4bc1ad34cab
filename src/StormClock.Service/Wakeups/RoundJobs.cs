using Quartz;
using StormClock.Service.Desk;

namespace StormClock.Service.Wakeups;

/// <summary>Looks at the feeds at regular times; it is also the sweep that catches whatever a missed wake-up left.</summary>
[DisallowConcurrentExecution]
public sealed class ListenJob(Round round, AlarmClock alarm) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken)
    {
        await round.RunAsync(listen: true, cancellationToken);
        await alarm.SetAsync(round.NextWake, cancellationToken);
    }
}

/// <summary>Decides and sends at the moment that time alone makes something due.</summary>
[DisallowConcurrentExecution]
public sealed class WakeJob(Round round, AlarmClock alarm) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken)
    {
        await round.RunAsync(listen: false, cancellationToken);
        await alarm.SetAsync(round.NextWake, cancellationToken);
    }
}
