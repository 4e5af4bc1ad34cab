using System.Collections.Concurrent;
using StormClock.Service.Delivery;

namespace StormClock.Service.Tests.Outbox;

/// <summary>A channel that answers as told and remembers everything that went out.</summary>
internal sealed class TestChannel(string name, Func<Outgoing, CancellationToken, Task<DeliveryOutcome>> answer) : IChannel
{
    public TestChannel(string name, DeliveryResult result, Duration? after = null)
        : this(name, (_, _) => Task.FromResult(new DeliveryOutcome(result, $"said {result}", after)))
    {
    }

    public string Name => name;

    public ConcurrentQueue<Outgoing> Sent { get; } = [];

    public Task<DeliveryOutcome> SendAsync(Outgoing message, CancellationToken cancellation)
    {
        Sent.Enqueue(message);
        return answer(message, cancellation);
    }
}
