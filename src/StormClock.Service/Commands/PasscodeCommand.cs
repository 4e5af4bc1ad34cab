using System.CommandLine;
using StormClock.Service.Visits;

namespace StormClock.Service.Commands;

/// <summary><c>passcode</c>: sets the passcode of the pages, read from standard input so that it stands in no list of processes and no history.</summary>
internal static class PasscodeCommand
{
    public static Command Make()
    {
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files." };
        var data = new Option<string?>("--data") { Description = "Data folder, in place of the one in the settings." };
        var command = new Command("passcode", "Set the passcode by which the keeper signs in on the pages; it is read from standard input, one line. Also while the service runs.") { config, data };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed.GetValue(config), parsed.GetValue(data))));
        return command;
    }

    private static int Run(string? config, string? data)
    {
        var inputs = new Inputs();
        var installation = Installation.Load(inputs, config, data);
        if (inputs.Report()) return ExitCode.BadInput;

        if (!Console.IsInputRedirected) Console.Error.Write($"Passcode, {PasscodeFile.Shortest} characters or more: ");
        var given = Console.In.ReadLine() ?? "";
        if (!PasscodeFile.IsGood(given))
        {
            inputs.Fault($"the passcode must have {PasscodeFile.Shortest} to {PasscodeFile.Longest} characters; some words in a row do well");
            inputs.Report();
            return ExitCode.BadInput;
        }

        try
        {
            new PasscodeFile(Path.Combine(Directory.CreateDirectory(installation!.Settings.DataFolder).FullName, PasscodeFile.Name)).Set(given);
            Console.WriteLine("The passcode is set.");
            return ExitCode.Good;
        }
        catch (Exception trouble) when (ExitCode.IsOutsideTrouble(trouble))
        {
            Console.Error.WriteLine(trouble.Message);
            return ExitCode.OutsideTrouble;
        }
    }
}
