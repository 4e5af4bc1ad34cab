using System.Text;
using StormClock.Service.Commands;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>What a command left behind.</summary>
internal sealed record CommandResult(int Exit, string Output, string Errors)
{
    public IReadOnlyList<string> ErrorLines => Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>Runs a command in this process. Each run hears only its own words, whatever runs beside it.</summary>
internal static class CommandRun
{
    private static readonly AsyncLocal<StringWriter?> Output = new();
    private static readonly AsyncLocal<StringWriter?> Errors = new();

    static CommandRun()
    {
        Console.SetOut(new Switch(Output, Console.Out));
        Console.SetError(new Switch(Errors, Console.Error));
    }

    public static async Task<CommandResult> RunAsync(params string[] arguments)
    {
        var (output, errors) = (new StringWriter(), new StringWriter());
        (Output.Value, Errors.Value) = (output, errors);
        var exit = await CommandLine.RunAsync(arguments);
        return new(exit, output.ToString(), errors.ToString());
    }

    /// <summary>Passes everything on to the run that says it.</summary>
    private sealed class Switch(AsyncLocal<StringWriter?> own, TextWriter other) : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value) => (own.Value ?? other).Write(value);

        public override void Write(string? value) => (own.Value ?? other).Write(value);
    }
}
