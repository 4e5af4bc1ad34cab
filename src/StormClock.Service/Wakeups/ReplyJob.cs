using Quartz;
using StormClock.Service.Replies;

namespace StormClock.Service.Wakeups;

/// <summary>Looks for answers by mail at regular times, beside the turns: a slow mail server holds up no message.</summary>
[DisallowConcurrentExecution]
internal sealed class ReplyJob(ReplyRound round, ILogger<ReplyJob> log) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken)
    {
        try
        {
            await round.LookAsync(cancellationToken);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "This look for answers failed; it is taken up by the next");
        }
    }
}
