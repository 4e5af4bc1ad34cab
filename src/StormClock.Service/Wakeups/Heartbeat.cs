namespace StormClock.Service.Wakeups;

/// <summary>Counts the turns that have come to an end: the sign of life in /health, and what virtual time waits for.</summary>
public sealed class Heartbeat
{
    private readonly Lock gate = new();
    private readonly List<(long Count, TaskCompletionSource Reached)> waiting = [];

    public long Count { get; private set; }

    /// <summary>When the last turn ended; null before the first.</summary>
    public Instant? Last { get; private set; }

    /// <summary>Why the last turn that failed did; null when none has.</summary>
    public Exception? Fault { get; set; }

    public void Beat(Instant now)
    {
        lock (gate)
        {
            Count++;
            Last = now;
            foreach (var (_, reached) in waiting.Where(waiter => waiter.Count <= Count)) reached.TrySetResult();
            waiting.RemoveAll(waiter => waiter.Count <= Count);
        }
    }

    /// <summary>Completes when so many turns have ended in all.</summary>
    public Task ReachAsync(long count)
    {
        lock (gate)
        {
            if (Count >= count) return Task.CompletedTask;
            var reached = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            waiting.Add((count, reached));
            return reached.Task;
        }
    }
}
