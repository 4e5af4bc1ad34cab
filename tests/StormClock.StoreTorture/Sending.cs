using StormClock.Service.Delivery.Email;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.StoreTorture;

/// <summary>Sends what waits in the outbox to a mail server on this machine, by a clock that stands still.</summary>
internal static class Sending
{
    public static async Task RunAsync(StormStore store, int port, Instant now)
    {
        var server = new EmailSettings("127.0.0.1", port, EmailSecurity.None, new("StormClock", "box@garden.example"), Duration.FromSeconds(10), CheckRevocation: false);
        using var dispatcher = new Dispatcher(store, [new SmtpChannel(server)], new StandingClock(now));
        await dispatcher.RunAsync(CancellationToken.None);
    }

    private sealed class StandingClock(Instant now) : IClock
    {
        public Instant GetCurrentInstant() => now;
    }
}
