namespace StormClock.Service.Web.Start;

/// <summary>The addresses of the first run.</summary>
internal static class StartPages
{
    public static IServiceCollection AddStartPages(this IServiceCollection services) => services.AddSingleton<PracticeRun>().AddSingleton<StartEndpoints>();

    public static IEndpointRouteBuilder MapStartPages(this IEndpointRouteBuilder routes)
    {
        string[] reading = [HttpMethods.Get, HttpMethods.Head];
        var start = routes.ServiceProvider.GetRequiredService<StartEndpoints>();
        routes.MapMethods("/start", reading, (Delegate)start.Show);
        routes.MapPost("/start", (Delegate)start.MakeAsync);
        routes.MapMethods("/start/mail", reading, (Delegate)start.Mail);
        routes.MapPost("/start/mail", (Delegate)start.TryMailAsync).RequireRateLimiting(StormPages.TestLimit);
        routes.MapMethods("/start/practice", reading, (Delegate)start.Practice);
        routes.MapPost("/start/practice", (Delegate)start.BeginPracticeAsync);
        return routes;
    }
}
