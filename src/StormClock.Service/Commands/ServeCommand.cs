using System.CommandLine;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Store;

namespace StormClock.Service.Commands;

/// <summary><c>serve</c>, the default: listens, decides, sends, and shows the pages until it is stopped.</summary>
internal static class ServeCommand
{
    /// <summary>Notes made by hand are seen this soon; the feeds keep their own pace.</summary>
    private static readonly Duration ListenEvery = Duration.FromMinutes(1);

    public static Command Make()
    {
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files. Default: config/ here." };
        var data = new Option<string?>("--data") { Description = "Data folder, in place of the one in the settings." };
        var record = new Option<string?>("--record") { Description = "Keep every raw answer of the feeds in this folder, with its time and headers; rehearse plays it back." };
        var command = new Command("serve", "The service: listens to the forecast, decides, sends, and shows the pages.") { config, data, record };
        command.SetAction((parsed, cancellation) => RunAsync(parsed.GetValue(config), parsed.GetValue(data), parsed.GetValue(record), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string? config, string? data, string? record, CancellationToken cancellation)
    {
        var inputs = new Inputs();
        var installation = Installation.Load(inputs, config, data);
        var channel = installation?.Channel(inputs);
        var feeds = installation?.FeedSettings(inputs);
        inputs.WritableFolder(record, "--record");
        var webhooks = installation?.Webhooks(inputs);
        var replies = installation?.Replies(inputs);
        if (inputs.Report()) return ExitCode.BadInput;

        var settings = installation!.Settings;
        try
        {
            var store = StormStore.Open(Directory.CreateDirectory(settings.DataFolder).FullName);
            var time = TimeProvider.System;
            var gardens = new GardenShelf(installation.GardensFolder);
            var plan = new HostPlan(
                settings.DataFolder, gardens, clock => installation.Feeds(feeds!, store, time, clock, new GardenPlaces(gardens), record), channel!, time,
                new($"http://{settings.Pages.Listen}"), settings.Pages.PhonesCanReach ? settings.Pages.Address : null,
                ListenEvery, Instant.FromDateTimeOffset(time.GetUtcNow()), LinksPerMinute: 60, Practice: false)
            {
                ConfigFolder = installation.ConfigFolder,
                Quiet = settings.QuietHours,
                Push = installation.Push,
                SignOfLife = settings.Heartbeat,
                Webhooks = webhooks!,
                Replies = replies,
            };
            await using var host = Composition.Build(plan, store);
            ServiceLog.Attach(host);
            await host.StartAsync(cancellation);
            ServiceLog.TellAddress(host);
            await host.WaitForShutdownAsync(cancellation);
            return ExitCode.Good;
        }
        catch (Exception trouble) when (ExitCode.IsOutsideTrouble(trouble))
        {
            await Console.Error.WriteLineAsync(trouble.Message);
            return ExitCode.OutsideTrouble;
        }
    }
}
