using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Store;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The plan in force outlives the process, so that a restart is no occasion for another.</summary>
public sealed class KeptPlanRestartTests : IDisposable
{
    private static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 11, 0);

    private readonly TempFolder data = new();

    public void Dispose() => data.Dispose();

    [Fact]
    public async Task Plan_AfterARestart_IsTheOneInForce()
    {
        var before = await PlanAsync(PracticeStorm.Garden, Begin);
        var after = await PlanAsync(PracticeStorm.Garden with { }, Begin + Duration.FromMinutes(10));
        Assert.NotEmpty(before.Jobs);
        Assert.Equal(Begin, after.Made);
        Assert.Equal(Told(before), Told(after));
    }

    [Fact]
    public async Task Plan_BookChangedMeanwhile_IsMadeAnew()
    {
        await PlanAsync(PracticeStorm.Garden, Begin);
        var changed = PracticeStorm.Garden with { Supplies = [] };
        Assert.Equal(Begin + Duration.FromMinutes(10), (await PlanAsync(changed, Begin + Duration.FromMinutes(10))).Made);
    }

    [Fact]
    public async Task Plan_KeptByAnotherVersion_IsMadeAnew()
    {
        await PlanAsync(PracticeStorm.Garden, Begin);
        using (var store = StormStore.Open(data.Path))
        {
            await store.WriteAsync(transaction => KeptPlans.Put(transaction, PracticeStorm.Garden.Id, "{\"Plan\": 7}"), TestContext.Current.CancellationToken);
        }

        Assert.Equal(Begin + Duration.FromMinutes(10), (await PlanAsync(PracticeStorm.Garden with { }, Begin + Duration.FromMinutes(10))).Made);
    }

    private async Task<GardenPlan> PlanAsync(GardenBook book, Instant at)
    {
        await using var service = await VirtualService.StartAsync(
            at, new GardenShelf([book]), clock => [new ReplayFeed(PracticeStorm.Messages, clock)], new TestChannel("email", DeliveryResult.Delivered), Duration.FromMinutes(30), practice: true, data.Path);
        return service.Services.GetRequiredService<GardenDesk>().Latest[book.Id].Plan!;
    }

    private static string Told(GardenPlan plan) => string.Join(
        '\n',
        [
            .. plan.Jobs.Select(job => $"{job.Job} {string.Join('+', job.People)} {job.Start} {job.End} {job.StartBy} {job.ChanceDone}"),
            .. plan.LeftOut.Concat(plan.BetterLeft).Select(left => $"{left.Job.Id} {left.Why.Cause} {left.Fallback} {left.Answered}"),
            .. plan.Buy.Select(buy => $"{buy}"),
            .. plan.Stores.Select(store => $"{store.StoreId} {store.UsedM2} {string.Join(' ', store.Jobs)}"),
            .. plan.WorkStops.OrderBy(stop => stop.Key).Select(stop => $"{stop}"),
            .. plan.Changes.Select(change => $"{change}"),
        ]);
}
