using Quartz;
using StormClock.Core;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Outbox;
using StormClock.Service.Replies;
using StormClock.Service.Sheets;
using StormClock.Service.Store;
using StormClock.Service.Wakeups;
using StormClock.Service.Visits;
using StormClock.Service.Web;
using StormClock.Service.Web.Api;
using StormClock.Service.Web.Garden;
using StormClock.Service.Web.Keeper;
using StormClock.Service.Web.Start;
using StormClock.Service.Web.Visits;

namespace StormClock.Service;

/// <summary>Puts the parts together. The only place that knows them all.</summary>
internal static class Composition
{
    /// <summary>Builds the host over an open store; the store is disposed with the host.</summary>
    public static WebApplication Build(HostPlan plan, StormStore store)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        if (plan.Practice) builder.Logging.ClearProviders();
        else AddLog(builder.Logging);
        builder.WebHost.UseUrls(plan.Listen.ToString());
        AddTime(builder.Services, plan);
        AddDesk(builder.Services, plan, store);
        AddWakeups(builder.Services, plan);
        AddReplies(builder.Services, plan);
        AddPages(builder.Services, plan);

        var host = builder.Build();

        // Made here, so that whatever cannot be put together shows at once and not at the first turn.
        host.Services.GetRequiredService<Turns>();
        host.UseStormPages();
        host.UseStormApi();
        host.MapStormPages();
        host.MapSignIn();
        host.MapKeys();
        host.MapGardenPages();
        host.MapKeeperPages();
        host.MapStartPages();
        if (plan.Push is not null) host.MapPushPages();
        return host;
    }

    /// <summary>Only what the keeper can do something about; that form keys lie in the data folder unencrypted is meant so.</summary>
    private static void AddLog(ILoggingBuilder logging) => logging
        .AddSimpleConsole(console => console.SingleLine = true)
        .AddFilter("Microsoft", LogLevel.Warning)
        .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error)
        .AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Error)
        .AddFilter("Microsoft.Extensions.Hosting", LogLevel.None)
        .AddFilter("Quartz", LogLevel.Warning);

    private static void AddTime(IServiceCollection services, HostPlan plan)
    {
        services.AddSingleton(plan.Time);
        services.AddSingleton<IClock>(new ProviderClock(plan.Time));
    }

    private static void AddDesk(IServiceCollection services, HostPlan plan, StormStore store)
    {
        services.AddSingleton(_ => store);
        services.AddSingleton(new Journal());
        services.AddSingleton(plan.Gardens);
        services.AddSingleton(provider => plan.Feeds(provider.GetRequiredService<IClock>()));
        services.AddSingleton(provider => new FeedWatch(store, provider.GetRequiredService<IReadOnlyList<IFeed>>()));
        services.AddSingleton(provider => new FeedRound(provider.GetRequiredService<IReadOnlyList<IFeed>>(), plan.Time));
        services.AddSingleton(provider => new Inbox(store, provider.GetRequiredService<IClock>(), provider.GetRequiredService<Journal>(), provider.GetRequiredService<FeedWatch>(), new GardenPlaces(plan.Gardens), plan.Practice));
        services.AddSingleton(LinkKeys(plan.DataFolder));
        services.AddSingleton(provider => new LinkMaker(plan.PagesAddress, provider.GetRequiredService<AckKeyRing>().Newest, plan.Push is not null, plan.Replies is not null));
        services.AddSingleton(provider => new LetterDesk(
            store.WriteAsync(Meta.InstallationId).GetAwaiter().GetResult(), provider.GetRequiredService<LinkMaker>()));
        services.AddSingleton(new StormDesk(plan.Quiet));
        services.AddSingleton(provider => new LetterEnclosures(PlanSheet.Of, provider.GetRequiredService<Journal>()));
        services.AddSingleton<GardenDesk>();
        services.AddSingleton(new PeopleReach(store, plan.Push is not null, [.. plan.Webhooks.Keys], plan.PagesAddress is not null || plan.Replies is not null, plan.Practice ? null : plan.Gardens));
        AddChannels(services, plan, store);
        services.AddSingleton<Dispatcher>();
        services.AddSingleton<Round>();
    }

    /// <summary>Mail always; notifications and webhooks where they are set up.</summary>
    private static void AddChannels(IServiceCollection services, HostPlan plan, StormStore store)
    {
        services.AddSingleton(plan.Channel);
        if (plan.Push is { } push)
        {
            services.AddSingleton(PushKeys(plan.DataFolder));
            services.AddSingleton<IChannel>(provider => new PushChannel(
                store, provider.GetRequiredService<VapidKeys>(), push.Contact, PublicInternet.Client(push.AllowLoopback), push.AllowLoopback, provider.GetRequiredService<IClock>()));
            services.AddSingleton(provider => new PushDesk(store, plan.Gardens, provider.GetRequiredService<VapidKeys>(), push.AllowLoopback));
        }

        if (plan.Webhooks.Count > 0)
        {
            var client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, PooledConnectionLifetime = TimeSpan.FromMinutes(15) }) { Timeout = TimeSpan.FromSeconds(30) };
            services.AddSingleton<IChannel>(provider => new WebhookChannel(plan.Webhooks, client, provider.GetRequiredService<IClock>()));
        }
    }

    private static void AddWakeups(IServiceCollection services, HostPlan plan)
    {
        services.AddSingleton<AlarmClock>();
        services.AddSingleton<Heartbeat>();
        services.AddSingleton(provider => new SignOfLife(
            plan.SignOfLife, new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, PooledConnectionLifetime = TimeSpan.FromMinutes(15) }) { Timeout = TimeSpan.FromSeconds(10) },
            provider.GetRequiredService<StormStore>(), provider.GetRequiredService<IClock>(), provider.GetRequiredService<ILogger<SignOfLife>>()));
        services.AddSingleton<Turns>();
        services.AddQuartz(quartz =>
        {
            quartz.UseTimeProvider(plan.Time);
            quartz.UseInMemoryStore();
            quartz.AddJob<WakeJob>(job => job.WithIdentity(AlarmClock.Wake).StoreDurably());
            quartz.AddJob<ListenJob>(job => job.WithIdentity(AlarmClock.Listen));
            quartz.AddTrigger(trigger => trigger
                .WithIdentity(AlarmClock.ListenTrigger)
                .ForJob(AlarmClock.Listen)
                .StartAt(plan.FirstListen.ToDateTimeOffset())
                .WithSimpleSchedule(schedule => schedule
                    .WithInterval(plan.ListenEvery.ToTimeSpan())
                    .RepeatForever()
                    .WithMisfireInstruction(SimpleTriggerMisfireInstruction.NowWithRemainingCount)));
        });
        services.AddQuartzHostedService(options => options.WaitForJobsToComplete = true);
        services.AddHostedService<Watchdog>();
    }

    /// <summary>Answers by mail, where a mailbox is set up for them; the watch says nothing where none is.</summary>
    private static void AddReplies(IServiceCollection services, HostPlan plan)
    {
        services.AddSingleton<ReplyWatch>();
        if (plan.Replies is not { } replies) return;

        services.AddSingleton(replies);
        services.AddSingleton<ReplyDesk>();
        services.AddSingleton<ReplyRound>();
        services.AddQuartz(quartz => quartz
            .AddJob<ReplyJob>(job => job.WithIdentity(AlarmClock.Replies))
            .AddTrigger(trigger => trigger
                .WithIdentity(AlarmClock.Replies.Name)
                .ForJob(AlarmClock.Replies)
                .StartAt((plan.FirstListen + replies.Every).ToDateTimeOffset())
                .WithSimpleSchedule(schedule => schedule
                    .WithInterval(replies.Every.ToTimeSpan())
                    .RepeatForever()
                    .WithMisfireInstruction(SimpleTriggerMisfireInstruction.NowWithRemainingCount))));
    }

    private static void AddPages(IServiceCollection services, HostPlan plan)
    {
        services.AddStormPages(new PagesSettings(plan.DataFolder, plan.PagesAddress, plan.LinksPerMinute, plan.MaySendTests) { ListensHereOnly = plan.Listen.IsLoopback });
        services.AddSingleton(new PasscodeFile(Path.Combine(plan.DataFolder, PasscodeFile.Name)));
        services.AddSingleton(provider => new Doorkeeper(
            provider.GetRequiredService<PagesSettings>(), provider.GetRequiredService<PasscodeFile>(),
            (id, now) => provider.GetRequiredService<SignInDesk>().Visitor(id, now), provider.GetRequiredService<IClock>()));
        services.AddSingleton(provider => new SignInDesk(
            provider.GetRequiredService<StormStore>(), plan.Gardens, provider.GetRequiredService<PasscodeFile>(), plan.Channel, provider.GetRequiredService<Turns>(),
            plan.PagesAddress ?? plan.Listen, provider.GetRequiredService<ILogger<SignInDesk>>()));
        services.AddGardenPages();
        services.AddKeeperPages(plan.DataFolder);
        services.AddStormApi();
        services.AddStartPages();
        services.AddSingleton(plan);
        services.AddSingleton<JobBook>();
        services.AddSingleton<IJobBook>(provider => provider.GetRequiredService<JobBook>());
        services.AddHostedService(provider => provider.GetRequiredService<JobBook>());
    }

    private static VapidKeys PushKeys(string dataFolder)
    {
        var keys = VapidKeyFile.ReadOrMake(Path.Combine(dataFolder, VapidKeyFile.Name));
        return keys.Value ?? throw new IOException(string.Join("; ", keys.Faults));
    }

    private static AckKeyRing LinkKeys(string dataFolder)
    {
        var keys = AckKeyFile.ReadOrMake(Path.Combine(dataFolder, AckKeyFile.Name));
        return keys.Value ?? throw new IOException(string.Join("; ", keys.Faults));
    }
}
