namespace StormClock.Service.Desk;

/// <summary>What happens, in the service's own log; trouble as a warning.</summary>
internal static class ServiceLog
{
    public static void Attach(IHost host)
    {
        var log = Log(host);
        host.Services.GetRequiredService<Journal>().Written += entry =>
            log.Log(entry.Kind is "trouble" or "missed" ? LogLevel.Warning : LogLevel.Information, "{Garden}{Line}", entry.Garden is { } garden ? garden + ": " : "", JournalLine.Of(entry));
    }

    /// <summary>Where the pages are, once they are served; with port 0 nobody could know otherwise.</summary>
    public static void TellAddress(WebApplication host) => Log(host).LogInformation("pages at {Addresses}", string.Join(", ", host.Urls));

    private static ILogger Log(IHost host) => host.Services.GetRequiredService<ILoggerFactory>().CreateLogger("StormClock");
}
