using System.CommandLine;

namespace StormClock.Service.Commands;

/// <summary>All commands; each stands in its own file.</summary>
internal static class CommandLine
{
    /// <summary>Told to end, the service (and nothing else) finishes what it is sending first; the host waits 30 s for that.</summary>
    private static readonly TimeSpan TimeToEnd = TimeSpan.FromSeconds(40);

    public static async Task<int> RunAsync(string[] args)
    {
        var root = new RootCommand("StormClock: what to do in the garden before the wind, by when, and what to look at after. It never says that it is safe to stay; official orders come first.");
        root.Subcommands.Add(ServeCommand.Make());
        root.Subcommands.Add(CheckCommand.Make());
        root.Subcommands.Add(ItemsCommand.Make());
        root.Subcommands.Add(ClockCommand.Make());
        root.Subcommands.Add(PlanCommand.Make());
        root.Subcommands.Add(RehearseCommand.Make());
        root.Subcommands.Add(NoteCommand.Make());
        root.Subcommands.Add(SendTestCommand.Make());
        root.Subcommands.Add(PasscodeCommand.Make());
        root.Subcommands.Add(RestoreCommand.Make());

        var words = args.Length == 0 ? ["serve"] : args;
        var parsed = root.Parse(words);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync(error.Message);
            await Console.Error.WriteLineAsync("Use --help to see what each command takes.");
            return ExitCode.Usage;
        }

        return await parsed.InvokeAsync(new() { ProcessTerminationTimeout = words[0] == "serve" ? TimeToEnd : TimeSpan.FromSeconds(2) });
    }
}
