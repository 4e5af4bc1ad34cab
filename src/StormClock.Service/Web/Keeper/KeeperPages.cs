using StormClock.Service.Desk;

namespace StormClock.Service.Web.Keeper;

/// <summary>The addresses of the keeper's page.</summary>
internal static class KeeperPages
{
    public static IServiceCollection AddKeeperPages(this IServiceCollection services, string dataFolder) => services
        .AddSingleton<Backup>()
        .AddSingleton(provider => new DayLog(Path.Combine(dataFolder, "log"), provider.GetRequiredService<Journal>()))
        .AddSingleton<KeeperEndpoints>();

    public static IEndpointRouteBuilder MapKeeperPages(this IEndpointRouteBuilder routes)
    {
        string[] reading = [HttpMethods.Get, HttpMethods.Head];
        var keeper = routes.ServiceProvider.GetRequiredService<KeeperEndpoints>();
        routes.MapMethods("/keeper", reading, (Delegate)keeper.ShowAsync);
        routes.MapMethods("/keeper/backup.zip", reading, (Delegate)keeper.BackupAsync);
        routes.MapPost("/keeper/passcode", (Delegate)keeper.SetPasscodeAsync);
        routes.MapPost("/keeper/test", (Delegate)keeper.TestAsync).RequireRateLimiting(StormPages.TestLimit);
        return routes;
    }
}
