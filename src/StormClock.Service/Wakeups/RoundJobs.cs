using Quartz;
using StormClock.Service.Desk;

namespace StormClock.Service.Wakeups;

/// <summary>Looks at the feeds at regular times; it is also the sweep that catches whatever a missed wake-up left.</summary>
[DisallowConcurrentExecution]
public sealed class ListenJob(Turns turns) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
        await turns.TakeAsync(listen: true, cancellationToken);
}

/// <summary>Decides and sends at the moment that time alone makes something due.</summary>
[DisallowConcurrentExecution]
public sealed class WakeJob(Turns turns) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
        await turns.TakeAsync(listen: false, cancellationToken);
}

/// <summary>Takes a turn and sets the alarm for the next one. A turn that fails is logged; the next sweep tries again.</summary>
public sealed class Turns(Round round, AlarmClock alarm, Heartbeat heartbeat, SignOfLife sign, IClock clock, ILogger<Turns> log)
{
    /// <inheritdoc cref="Round.BetweenTurnsAsync"/>
    public Task<T> BetweenAsync<T>(Func<Task<T>> work, CancellationToken cancellation) => round.BetweenTurnsAsync(work, cancellation);

    public async Task TakeAsync(bool listen, CancellationToken cancellation)
    {
        try
        {
            await round.RunAsync(listen, cancellation);
            await alarm.SetAsync(round.NextWake, cancellation);
            sign.Tell();
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "This turn failed; what it left is taken up by the next");
            heartbeat.Fault = fault;
        }
        finally
        {
            heartbeat.Beat(clock.GetCurrentInstant());
        }
    }
}
