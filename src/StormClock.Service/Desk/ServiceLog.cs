namespace StormClock.Service.Desk;

/// <summary>What happens, in the service's own log; trouble as a warning.</summary>
internal static class ServiceLog
{
    public static void Attach(IHost host)
    {
        var log = host.Services.GetRequiredService<ILoggerFactory>().CreateLogger("StormClock");
        host.Services.GetRequiredService<Journal>().Written += entry =>
            log.Log(entry.Kind is "trouble" or "missed" ? LogLevel.Warning : LogLevel.Information, "{Garden}{Line}", entry.Garden is { } garden ? garden + ": " : "", JournalLine.Of(entry));
    }
}
