using Microsoft.AspNetCore.Mvc;
using StormClock.Service.Visits;
using StormClock.Service.Web.Api.Shapes;

namespace StormClock.Service.Web.Api;

/// <summary>The addresses of the API, below <c>/api/v1/</c>.</summary>
internal static class ApiPages
{
    public const string Root = "/api/v1";

    private static readonly PathString Below = "/api";

    public static bool IsApi(HttpRequest request) => request.Path.StartsWithSegments(Below);

    /// <summary>Needs the pages of gardens beside it.</summary>
    public static IServiceCollection AddStormApi(this IServiceCollection services) => services
        .AddSingleton<KeyDesk>()
        .AddSingleton<ApiGate>()
        .AddSingleton<ApiDoor>()
        .AddSingleton<ApiDescriber>()
        .AddSingleton<GardenApi>()
        .AddSingleton<WorkApi>();

    /// <summary>Takes every request below its addresses. All of it is made at the first one: a box that nobody asks carries none of it.</summary>
    public static IApplicationBuilder UseStormApi(this IApplicationBuilder app)
    {
        var api = new Lazy<RequestDelegate>(() => Make(app.ApplicationServices));
        return app.Use((context, next) => IsApi(context.Request) ? api.Value(context) : next(context));
    }

    private static RequestDelegate Make(IServiceProvider services)
    {
        var gate = services.GetRequiredService<ApiGate>();
        var api = new ApplicationBuilder(services);
        api.UseRouting().Use(gate.PassAsync).UseEndpoints(Map);
        return api.Build();
    }

    private static void Map(IEndpointRouteBuilder routes)
    {
        var describer = routes.ServiceProvider.GetRequiredService<ApiDescriber>();
        routes.MapGet($"{Root}/openapi.json", (RequestDelegate)describer.WriteAsync).AllowAnonymous();
        var api = routes.MapGroup(Root).ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status429TooManyRequests);
        var gardens = routes.ServiceProvider.GetRequiredService<GardenApi>();
        var work = routes.ServiceProvider.GetRequiredService<WorkApi>();
        api.MapGet("gardens", gardens.Gardens).WithName("gardens").WithTags("gardens");

        var garden = api.MapGroup("gardens/{garden}").ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        garden.MapGet("now", gardens.Now).WithName("now").WithTags("gardens");
        garden.MapGet("plan", gardens.Plan).WithName("plan").WithTags("work");
        garden.MapGet("items", gardens.Items).WithName("items").WithTags("gardens");
        garden.MapGet("storms", gardens.Storms).WithName("storms").WithTags("gardens");
        garden.MapGet("jobs", work.Jobs).WithName("jobs").WithTags("work");
        garden.MapGet("after", work.After).WithName("after").WithTags("after");
        Taking<ApiAnswer>(garden.MapPost("jobs/answer", work.AnswerAsync)).WithName("answer").WithTags("work");
        Taking<ApiIn>(garden.MapPost("in", work.InAsync)).WithName("in").WithTags("work");
        Taking<ApiOutcome>(garden.MapPost("after/outcome", work.OutcomeAsync)).WithName("outcome").WithTags("after");
    }

    /// <summary>The body is read by our own strict hand, so the framework is told what it is.</summary>
    private static RouteHandlerBuilder Taking<TBody>(RouteHandlerBuilder address)
        where TBody : notnull => address
        .Accepts<TBody>(ApiBody.MediaType)
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status409Conflict)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
        .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
        .WithMetadata(new RequestSizeLimitAttribute(ApiBody.Largest));
}
