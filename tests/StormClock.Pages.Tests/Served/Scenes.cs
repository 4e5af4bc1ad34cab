using System.Collections.Concurrent;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Service.Desk;

namespace StormClock.Pages.Tests.Served;

/// <summary>Plays each scene once for all tests that only look; a test that changes something plays one of its own.</summary>
public sealed class Scenes : IAsyncDisposable
{
    private readonly ConcurrentDictionary<Scene, Lazy<Task<ServedStorm>>> played = [];

    internal async Task<ServedStorm> PlayAsync(Scene scene)
    {
        var storm = await played.GetOrAdd(scene, scene => new(scene.PlayAsync)).Value;
        if (scene.Stage is { } stage) Assert.Equal(stage, storm.Services.GetRequiredService<GardenDesk>().Latest["tern-hook"].Standing.Stage.Stage);
        return storm;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var storm in played.Values.Where(scene => scene.Value.IsCompletedSuccessfully)) await (await storm.Value).DisposeAsync();
    }
}
