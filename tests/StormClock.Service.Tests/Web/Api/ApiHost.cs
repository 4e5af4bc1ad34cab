using StormClock.Core;
using StormClock.Core.Garden;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Service.Desk;
using StormClock.Service.Tests.Visits;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>The whole service in the practice storm while work is planned, and a program of each sort of person, for tests that change nothing.</summary>
public sealed class ApiHost : IAsyncLifetime
{
    private readonly Dictionary<string, HttpClient> programs = [];

    internal GardenHost Host { get; private set; } = null!;

    internal Decision Decision => Host.Service.Services.GetRequiredService<GardenDesk>().Latest[GardenHost.Garden.Id];

    internal static Person Helper => GardenHost.Garden.People.First(person => person.Role == PersonRole.Helper);

    /// <summary>Of a <c>stranger</c>, <c>helper</c>, <c>gardener</c> or <c>keeper</c>.</summary>
    internal HttpClient Program(string who) => programs[who];

    public async ValueTask InitializeAsync()
    {
        Host = await GardenHost.StartAsync(passcode: true);
        programs["stranger"] = Host.Program();
        using var helper = await Host.EnterAsync("helper@practice.invalid");
        programs["helper"] = Host.Program(await ApiCaller.MakeKeyAsync(helper));
        using var gardener = await Host.EnterAsync("gardener@practice.invalid");
        programs["gardener"] = Host.Program(await ApiCaller.MakeKeyAsync(gardener));
        using var keeper = await Host.EnterByPasscodeAsync();
        programs["keeper"] = Host.Program(await ApiCaller.MakeKeyAsync(keeper));
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var program in programs.Values) program.Dispose();
        await Host.DisposeAsync();
    }
}
