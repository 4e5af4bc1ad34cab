using System.CommandLine;
using StormClock.Service.Books;
using StormClock.Service.Feeds.Signatures;
using StormClock.Service.Settings;

namespace StormClock.Service.Commands;

/// <summary><c>check</c>: every fault of the installation's files, and what the service would do with the good ones.</summary>
internal static class CheckCommand
{
    public static Command Make()
    {
        var file = new Argument<string?>("file") { Arity = ArgumentArity.ZeroOrOne, Description = "One garden book. Default: the settings and all gardens." };
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files." };
        var water = new Option<string?>("--water") { Description = "A water level to hold against the gardens, with its datum, such as \"1.8 m NAVD88\"." };
        var now = new Option<string?>("--now") { Description = "The time to check at, such as 2027-09-12T10:00Z. Default: now." };
        var command = new Command("check", "Reads the files and says what is wrong with each, or what would be done.") { file, config, water, now };
        command.SetAction(parsed => Run(parsed.GetValue(file), parsed.GetValue(config), parsed.GetValue(water), parsed.GetValue(now)));
        return command;
    }

    private static int Run(string? file, string? config, string? water, string? nowText)
    {
        var inputs = new Inputs();
        var level = inputs.Water(water, "--water");
        var now = inputs.Time(nowText, "--now") ?? Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        if (inputs.Report()) return ExitCode.BadInput;

        var folder = ConfigFolder.Find(config);
        if (file is null && !Directory.Exists(folder))
        {
            Console.Error.WriteLine($"{folder}: there is no such folder; make it, or name another with --config");
            return ExitCode.BadInput;
        }

        var settingsFile = Installation.SettingsFileIn(folder);
        var gardens = file is null ? GardenFiles.Load(Installation.GardensIn(folder)) : [One(file)];
        var settings = SettingsFile.Load(settingsFile, Installation.PresetsIn(folder), GardenFiles.Served(gardens));
        var report = CheckReport.Of(settingsFile, settings, gardens, now.InUtc().Date, level);
        var signers = (settings.Value?.Feeds ?? []).Select(feed => feed.SignedBy).OfType<SignerFile>().Distinct().SelectMany(pem => FeedSigners.Load(pem).Faults).Select(fault => fault.ToldOf(settingsFile)).ToList();
        foreach (var fault in report.Faults.Concat(signers)) Console.Error.WriteLine(fault);
        foreach (var line in report.Would) Console.WriteLine(line);
        return report.IsGood && signers.Count == 0 ? ExitCode.Good : ExitCode.BadInput;
    }

    private static GardenFile One(string file)
    {
        var read = GardenFiles.Read(file);
        return new(file, read, read.Value);
    }
}
