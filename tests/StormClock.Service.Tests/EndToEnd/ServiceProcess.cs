using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The real program in a process of its own, with what it has said so far.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Process process;
    private readonly StringBuilder output = new();
    private readonly StringBuilder errors = new();

    private ServiceProcess(Process process)
    {
        this.process = process;
        process.OutputDataReceived += (_, said) => Hear(output, said.Data);
        process.ErrorDataReceived += (_, said) => Hear(errors, said.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public string Output => Text(output);

    public string Errors => Text(errors);

    public int Id => process.Id;

    public bool HasExited => process.HasExited;

    /// <param name="folder">Working folder of the process.</param>
    public static ServiceProcess Start(string folder, params string[] arguments) => Start(folder, new Dictionary<string, string>(), arguments);

    public static ServiceProcess Start(string folder, IReadOnlyDictionary<string, string> variables, params string[] arguments)
    {
        var dotnet = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "dotnet"));
        var start = new ProcessStartInfo(dotnet) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false, WorkingDirectory = folder };
        foreach (var argument in arguments.Prepend(Path.Combine(AppContext.BaseDirectory, "stormclock.dll"))) start.ArgumentList.Add(argument);
        foreach (var (name, value) in variables) start.Environment[name] = value;
        return new(Process.Start(start)!);
    }

    /// <summary>Runs to its end.</summary>
    public static Task<CommandResult> RunAsync(string folder, params string[] arguments) => RunAsync(folder, new Dictionary<string, string>(), arguments);

    public static async Task<CommandResult> RunAsync(string folder, IReadOnlyDictionary<string, string> variables, params string[] arguments)
    {
        using var process = Start(folder, variables, arguments);
        var exit = await process.EndAsync();
        return new(exit, process.Output, process.Errors);
    }

    /// <summary>Waits for its end; the exit code.</summary>
    public async Task<int> EndAsync()
    {
        await process.WaitForExitAsync(TestContext.Current.CancellationToken).WaitAsync(Patience, TestContext.Current.CancellationToken);
        return process.ExitCode;
    }

    /// <summary>Waits until something it has said holds.</summary>
    public async Task HearAsync(Func<string, bool> said)
    {
        var watch = Stopwatch.StartNew();
        while (!said(Output))
        {
            Assert.False(HasExited, $"it ended by itself: {Errors}");
            Assert.True(watch.Elapsed < Patience, $"it never said what was waited for, but: {Output}{Errors}");
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Signal 9: nothing of the process gets a last word.</summary>
    public void Kill() => process.Kill();

    /// <summary>Signal 15, as a service manager stops it.</summary>
    public void Terminate() => Assert.Equal(0, Signal(process.Id, 15));

    public void Dispose()
    {
        if (!process.HasExited) process.Kill();
        process.Dispose();
    }

    [DllImport("libc", EntryPoint = "kill")]
    private static extern int Signal(int process, int signal);

    private static void Hear(StringBuilder heard, string? line)
    {
        if (line is null) return;
        lock (heard) heard.Append(line).Append('\n');
    }

    private static string Text(StringBuilder heard)
    {
        lock (heard) return heard.ToString();
    }
}
