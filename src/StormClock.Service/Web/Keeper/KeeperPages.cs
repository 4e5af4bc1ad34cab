using StormClock.Service.Desk;

namespace StormClock.Service.Web.Keeper;

/// <summary>The addresses of the keeper's page.</summary>
internal static class KeeperPages
{
    public static IServiceCollection AddKeeperPages(this IServiceCollection services, string dataFolder) => services
        .AddSingleton<Backup>()
        .AddSingleton(provider => new DayLog(Path.Combine(dataFolder, "log"), provider.GetRequiredService<Journal>()))
        .AddSingleton<KeeperDoor>()
        .AddSingleton<KeeperEndpoints>()
        .AddSingleton<PeopleEndpoints>();

    public static IEndpointRouteBuilder MapKeeperPages(this IEndpointRouteBuilder routes)
    {
        string[] reading = [HttpMethods.Get, HttpMethods.Head];
        var keeper = routes.ServiceProvider.GetRequiredService<KeeperEndpoints>();
        routes.MapMethods("/keeper", reading, (Delegate)keeper.ShowAsync);
        routes.MapMethods("/keeper/backup.zip", reading, (Delegate)keeper.BackupAsync);
        routes.MapPost("/keeper/passcode", (Delegate)keeper.SetPasscodeAsync);
        routes.MapPost("/keeper/test", (Delegate)keeper.TestAsync).RequireRateLimiting(StormPages.TestLimit);
        var people = routes.ServiceProvider.GetRequiredService<PeopleEndpoints>();
        routes.MapMethods("/keeper/people/{garden}", reading, (Delegate)people.People);
        routes.MapMethods("/keeper/people/{garden}/{person}", reading, (Delegate)people.Person);
        routes.MapPost("/keeper/people/{garden}/add", (Delegate)people.AddAsync);
        routes.MapPost("/keeper/people/{garden}/{person}/change", (Delegate)people.ChangeAsync);
        return routes;
    }
}
