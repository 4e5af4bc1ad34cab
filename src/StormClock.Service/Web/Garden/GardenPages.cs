using System.Text.Json;
using StormClock.Service.Desk;
using StormClock.Service.Photos;
using StormClock.Service.Visits;

namespace StormClock.Service.Web.Garden;

/// <summary>The addresses of a garden's pages, below <c>/g/{garden}/</c>.</summary>
internal static class GardenPages
{
    public static string PathOf(GardenRoom room) => JsonNamingPolicy.KebabCaseLower.ConvertName(room.ToString());

    public static IServiceCollection AddGardenPages(this IServiceCollection services) => services
        .AddSingleton<GardenDoor>()
        .AddSingleton<GardenMemory>()
        .AddSingleton<AnswerDesk>()
        .AddSingleton<WorkEndpoints>()
        .AddSingleton<AfterEndpoints>()
        .AddSingleton<WorryEndpoints>()
        .AddSingleton<BookDesk>()
        .AddSingleton<WalkEndpoints>()
        .AddSingleton(provider => new PhotoShelf(provider.GetRequiredService<PagesSettings>().DataFolder))
        .AddSingleton<PhotoDesk>()
        .AddSingleton<Uploads>()
        .AddSingleton<PhotoEndpoints>()
        .AddSingleton<OutcomePhotoEndpoints>()
        .AddSingleton<PlotEndpoints>();

    public static IEndpointRouteBuilder MapGardenPages(this IEndpointRouteBuilder routes)
    {
        var garden = routes.MapGroup("/g/{garden}");
        var work = routes.ServiceProvider.GetRequiredService<WorkEndpoints>();
        Reading(garden, PathOf(GardenRoom.Now), work.Now);
        Reading(garden, PathOf(GardenRoom.Jobs), work.Jobs);
        Reading(garden, "plan.pdf", work.Sheet);
        garden.MapPost("answer", work.AnswerAsync);
        var after = routes.ServiceProvider.GetRequiredService<AfterEndpoints>();
        Reading(garden, PathOf(GardenRoom.After), after.Show);
        Reading(garden, "after/{item}", after.Item);
        garden.MapPost("outcome", after.RecordAsync);
        var worry = routes.ServiceProvider.GetRequiredService<WorryEndpoints>();
        Reading(garden, PathOf(GardenRoom.Worry), worry.Worry);
        Reading(garden, PathOf(GardenRoom.Storms), worry.Storms);
        MapWalk(garden, routes.ServiceProvider.GetRequiredService<WalkEndpoints>());
        MapPhotos(garden, routes.ServiceProvider.GetRequiredService<PhotoEndpoints>());
        MapOutcomePhotos(garden, routes.ServiceProvider.GetRequiredService<OutcomePhotoEndpoints>());
        MapPlot(garden, routes.ServiceProvider.GetRequiredService<PlotEndpoints>());
        routes.MapMethods("/" + WalkScript.Name, [HttpMethods.Get, HttpMethods.Head], WalkScript.Serve);
        return routes;
    }

    private static void MapWalk(RouteGroupBuilder garden, WalkEndpoints walk)
    {
        Reading(garden, "walk", walk.Areas);
        Reading(garden, "walk/{area}", walk.Area);
        Reading(garden, "walk/{area}/{item}", walk.Item);
        garden.MapPost("walk/add-area", walk.AddAreaAsync);
        garden.MapPost("walk/end", walk.EndAsync);
        garden.MapPost("walk/{area}/add", walk.AddItemAsync);
        garden.MapPost("walk/{area}/same", walk.SameAsync);
        garden.MapPost("walk/{area}/{item}/change", walk.ChangeItemAsync);
        garden.MapPost("walk/{area}/{item}/job", walk.AddJobAsync);
    }

    private static void MapPhotos(RouteGroupBuilder garden, PhotoEndpoints photos)
    {
        Reading(garden, "photo/{name}", photos.Large);
        Reading(garden, "photo/{name}/small", photos.Small);
        Uploading(garden, "walk/{area}/{item}/photo", photos.AddAsync);
        garden.MapPost("walk/{area}/{item}/photo-away", photos.RemoveAsync);
    }

    private static void MapOutcomePhotos(RouteGroupBuilder garden, OutcomePhotoEndpoints photos)
    {
        Uploading(garden, "after/{item}/photo", photos.AddAsync);
        garden.MapPost("after/{item}/photo-away", photos.RemoveAsync);
    }

    private static void MapPlot(RouteGroupBuilder garden, PlotEndpoints plot)
    {
        Reading(garden, PathOf(GardenRoom.PlotMap), plot.Show);
        Reading(garden, "plot-map.svg", plot.Svg);
        garden.MapPost("plot-map/place", plot.PlaceAsync);
        Uploading(garden, "plot-map/sketch", plot.PutSketchAsync);
        garden.MapPost("plot-map/sketch-change", plot.ChangeSketchAsync);
    }

    private static void Uploading(RouteGroupBuilder garden, string path, Delegate take) =>
        garden.MapPost(path, take).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(Uploads.LargestForm));

    private static void Reading(RouteGroupBuilder garden, string path, Delegate show) => garden.MapMethods(path, [HttpMethods.Get, HttpMethods.Head], show);
}
