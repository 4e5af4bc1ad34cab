using StormClock.Service.Outbox;
using StormClock.Service.Settings;
using StormClock.Service.Store;

namespace StormClock.Service.Wakeups;

/// <summary>
/// Asks an address outside, at a pace, after turns that ended well and while messages go out: whoever watches there learns of a dead
/// box by its silence. What goes wrong with it is logged and holds nothing up.
/// </summary>
/// <param name="settings">Null: nobody is told.</param>
public sealed class SignOfLife(HeartbeatSettings? settings, HttpClient client, StormStore store, IClock clock, ILogger<SignOfLife> log)
{
    private Instant? last;

    /// <summary>After a turn that ended well.</summary>
    public void Tell()
    {
        var now = clock.GetCurrentInstant();
        if (settings is null || now - last < settings.Every || store.Read(reader => OutboxHealth.Of(reader, now)).IsStuck) return;
        last = now;
        _ = AskAsync(settings.Url);
    }

    /// <summary>The path may hold a secret, so only the host is named.</summary>
    private async Task AskAsync(Uri url)
    {
        try
        {
            using var answer = await client.GetAsync(url, HttpCompletionOption.ResponseHeadersRead);
            if (!answer.IsSuccessStatusCode) log.LogWarning("The sign of life was answered with {Status} by {Host}", (int)answer.StatusCode, url.Host);
        }
        catch (Exception fault)
        {
            log.LogWarning("The sign of life did not reach {Host}: {Fault}", url.Host, fault.GetType().Name);
        }
    }
}
