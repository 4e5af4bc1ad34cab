using System.Text.Json;
using System.Text.RegularExpressions;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>Whatever a command is given by mistake, it says what is wrong with which file and where, a line each, and does nothing.</summary>
public partial class BadInputTests(BadFiles files) : IClassFixture<BadFiles>
{
    private const string Clock = "clock --json --advisories ";
    private const string Plan = "plan --json --garden good.yaml --advisories good.txt --now 2027-09-21T16:00Z ";
    private const string PlanOf = "plan --json --advisories good.txt --now 2027-09-21T16:00Z --garden ";
    private const string Rehearse = "rehearse --json --out out ";
    private const string Wind = "note wind --data data --config installation --from 2027-09-12T10:00Z ";

    /// <summary>The command, its exit code, and the beginning of each line that it must say: names of files are those below the folder.</summary>
    public static TheoryData<string, int, string[]> Mistakes => new()
    {
        { Clock + "missing.txt --places good.csv", 1, ["missing.txt: there is no such file or folder"] },
        { Clock + "empty --places good.csv", 1, ["empty: the folder holds no messages"] },
        { Clock + "page.txt --places good.csv", 1, ["page.txt:1: this is an HTML page"] },
        { Clock + "noise.txt --places good.csv", 1, ["noise.txt:1: this is binary data"] },
        { Clock + "cut.txt --places good.csv", 1, ["cut.txt:18: cannot be understood", "cut.txt:18: the text ends before its closing lines"] },
        { Clock + "held.txt --places good.csv", 1, ["held.txt: cannot be read: "] },
        { Clock + "alert.xml --places good.csv", 1, ["alert.xml: holds no tropical cyclone forecast/advisory"] },
        { Clock + "good.txt --places missing.csv", 1, ["missing.csv:1: cannot be read: there is no such file"] },
        { Clock + "good.txt --places empty", 1, ["empty:1: cannot be read: this is a folder"] },
        { Clock + "good.txt --places empty.csv", 1, ["empty.csv: holds no place"] },
        { Clock + "good.txt --places noise.csv", 1, ["noise.csv:1: this is not UTF-8 text"] },
        { Clock + "good.txt --places held.txt", 1, ["held.txt:1: cannot be read; "] },
        { Clock + "good.txt --places lines.csv", 1, ["lines.csv:3: '91,0' is not", "lines.csv:4: a place is three cells", "lines.csv:5: '10,east' is not"] },
        { Clock + "page.txt --places empty.csv", 1, ["page.txt:1: ", "empty.csv: "] },
        { "clock --json --places good.csv", 2, ["Option '--advisories' is required.", "Use --help"] },
        { "clock --json --advisories good.txt --places good.csv --frobnicate", 2, ["Unrecognized command or argument '--frobnicate'.", "Use --help"] },
        { PlanOf + "missing.yaml", 1, ["missing.yaml:1: cannot be read: there is no such file"] },
        { PlanOf + "empty", 1, ["empty:1: cannot be read: this is a folder"] },
        { PlanOf + "broken.yaml", 1, ["broken.yaml:2: broken YAML"] },
        { PlanOf + "units.yaml", 1, ["units.yaml:5: 'units' of garden 'tern-hook' is 'furlongs'"] },
        { PlanOf + "mass.yaml", 1, ["mass.yaml:114: 'mass' of item 'fern-baskets'"] },
        { PlanOf + "page.yaml", 1, ["page.yaml:1: this is HTML"] },
        { PlanOf + "noise.yaml", 1, ["noise.yaml:1: this is not UTF-8 text"] },
        { PlanOf + "held.txt", 1, ["held.txt:1: cannot be read; "] },
        { Plan + "--now soon", 2, ["Option '--now' expects a single argument", "Use --help"] },
        { Plan + "--at 91,0", 1, ["--at: '91,0' is not LAT,LON"] },
        { Plan + "--at 0,181", 1, ["--at: '0,181' is not LAT,LON"] },
        { Plan + "--at NaN,0", 1, ["--at: 'NaN,0' is not LAT,LON"] },
        { Plan + "--at here", 1, ["--at: 'here' is not LAT,LON"] },
        { Plan + "--done missing.txt", 1, ["missing.txt:1: cannot be read: there is no such file"] },
        {
            Plan + "--done done.txt", 1,
            ["done.txt:1: the garden has no job 'no-such/tie'", "done.txt:2: a line is", "done.txt:3: 'dune' is not", "done.txt:4: '2' is not", "done.txt:5: 'yesterday' is not a time"]
        },
        { "plan --json --garden good.yaml --advisories good.txt --now yesterday", 1, ["--now: 'yesterday' is not a time"] },
        { "plan --json --garden good.yaml --advisories good.txt --now -9998-01-01T00:00Z", 1, ["--now: '-9998-01-01T00:00Z' is not a time"] },
        { "plan --json --garden good.yaml --advisories good.txt --now 9999-12-31T23:59Z", 1, ["--now: '9999-12-31T23:59Z' is not a time"] },
        { "plan --json --garden good.yaml --advisories good.txt", 2, ["Option '--now' is required.", "Use --help"] },
        { Rehearse + "--advisories missing --garden missing.yaml --at 91,0 --smtp here", 1, ["missing.yaml:1: ", "missing: ", "--at: ", "--smtp: "] },
        { Rehearse + "--smtp mail.example.org:25", 1, ["--smtp: 'mail.example.org:25' is not a server on this machine"] },
        { Rehearse + "--acks maybe", 2, ["--acks: 'maybe' is not one of none, prompt, late", "Use --help"] },
        { Rehearse + "--acks 1", 2, ["--acks: '1' is not one of none, prompt, late", "Use --help"] },
        { Rehearse + "--data good.txt", 1, ["--data: good.txt is a file; name a folder"] },
        { Rehearse + "--config missing", 1, ["--config: there is no folder missing"] },
        { "rehearse --json --out good.txt", 1, ["--out: good.txt is a file; name a folder"] },
        { "check missing.yaml", 1, ["missing.yaml:1: cannot be read: there is no such file"] },
        { "check empty", 1, ["empty:1: cannot be read: this is a folder"] },
        { "check broken.yaml", 1, ["broken.yaml:2: broken YAML"] },
        { "check --config missing", 1, ["missing: there is no such folder"] },
        { "check --config misspelt", 1, ["misspelt/stormclock.yaml:1: unknown key 'polll_minutes'"] },
        { "check --config noise-settings", 1, ["noise-settings/stormclock.yaml:1: this is not UTF-8 text"] },
        { "check --config folder-settings", 1, ["folder-settings/stormclock.yaml:1: cannot be read: this is a folder"] },
        { "note rain --data data --config installation --from 2027-09-12T10:00Z --day much", 1, ["--day: 'much' is not a depth of rain with its unit"] },
        { "note rain --data data --config installation --from 2027-09-12T10:00Z --day 90mm --hour 4in --now 2027-09-12T09:00Z", 1, ["--hour: must not be more than --day"] },
        { "note water --data data --config installation --level 1.8m", 1, ["--level: '1.8m' is not a level with its unit and datum"] },
        { "check good-garden.yaml --water high", 1, ["--water: 'high' is not a level with its unit and datum"] },
        { Wind + "--gust fast", 1, ["--gust: 'fast' is not a wind speed with its unit"] },
        { Wind + "--gust 60", 1, ["--gust: '60' is not a wind speed with its unit"] },
        { Wind + "--gust 900mph", 1, ["--gust: '900mph' is no gust"] },
        { Wind + "--gust 0mph", 1, ["--gust: '0mph' is no gust"] },
        { Wind + "--gust 60mph --until 2027-09-12T09:00Z", 1, ["--until: must be later than --from"] },
        { Wind + "--gust 60mph --garden nope", 1, ["--garden: there is no garden 'nope'; known: quay"] },
        { Wind + "--gust 60mph --now then", 1, ["--now: 'then' is not a time"] },
        { "note leave-by --data data --config installation noon", 1, ["time: 'noon' is not a time"] },
        { "note leave-by --data data --config installation", 2, ["Required argument 'time' missing", "Use --help"] },
        { "note all-clear --data good.txt --config installation", 1, ["--data: good.txt is a file; name a folder"] },
        { "note all-clear --data data --config missing", 1, ["--config: there is no folder missing", "--garden: name one garden; there is no garden in missing/gardens"] },
        { "note", 2, ["Required command was not provided.", "Use --help"] },
        { "send-test --data data --config installation --to nobody", 1, ["--to: there is no person 'nobody'; known: ines, otto"] },
        { "send-test --data data --config installation --to otto", 1, ["--to: 'otto' has no email in the garden book"] },
        { "send-test --data data --config no-password --to ines", 1, ["no-password/stormclock.yaml: mail/password_env: the environment variable STORMCLOCK_TEST_UNSET is not set"] },
        { "send-test --data data --config no-server --to ines", 3, ["not delivered to ines@example.org through 127.0.0.1:9: "] },
        { "send-test --data data --config installation", 2, ["Option '--to' is required.", "Use --help"] },
        { "serve --data data --config misspelt", 1, ["misspelt/stormclock.yaml:1: unknown key 'polll_minutes'"] },
        { "serve --data data --config missing", 1, ["--config: there is no folder missing"] },
        { "serve --data good.txt --config installation", 1, ["--data: good.txt is a file; name a folder"] },
        { "serve --data data --config folder-settings", 1, ["folder-settings/stormclock.yaml:1: cannot be read: this is a folder"] },
        { "frobnicate", 2, ["Required command was not provided.", "Unrecognized command or argument 'frobnicate'.", "Use --help"] },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public async Task Command_GivenAMistake_SaysEachFaultInOneLineAndNothingElse(string command, int exit, string[] lines)
    {
        var result = await CommandRun.RunAsync(Arguments(command));

        Assert.Equal(exit, result.Exit);
        if (!command.StartsWith("check", StringComparison.Ordinal)) Assert.Empty(result.Output);
        Assert.Equal(lines.Length, result.ErrorLines.Count);
        Assert.All(lines.Zip(result.ErrorLines), pair => Assert.StartsWith(pair.First, pair.Second.Replace(files.Folder + "/", "")));
        AssertPlain(result);
    }

    /// <summary>The same from the outside: another process has another working folder, console and exit code.</summary>
    [Theory]
    [InlineData(Clock + "page.txt --places good.csv", 1)]
    [InlineData(PlanOf + "broken.yaml", 1)]
    [InlineData(PlanOf + "noise.yaml --frobnicate", 2)]
    [InlineData("serve --data good.txt", 1)]
    public async Task Process_GivenAMistake_SaysItAndExits(string command, int exit)
    {
        var result = await ServiceProcess.RunAsync(files.Folder, command.Split(' '));

        Assert.Equal((exit, ""), (result.Exit, result.Output));
        Assert.InRange(result.ErrorLines.Count, 1, 2);
        AssertPlain(result);
    }

    /// <summary>100 MB in a process that may use 64 MB: it is refused by its size without being read whole.</summary>
    [Theory]
    [InlineData("clock --json --places good.csv --advisories huge.xml")]
    [InlineData("clock --json --advisories good.txt --places huge.xml")]
    [InlineData("plan --json --advisories good.txt --now 2027-09-21T16:00Z --garden huge.xml")]
    public async Task Process_GivenAHundredMegabytes_RefusesThemUnread(string command)
    {
        using var own = new BadFiles();
        Assert.True(new FileInfo(own.Huge("huge.xml")).Length > 90_000_000);

        var result = await ServiceProcess.RunAsync(own.Folder, new Dictionary<string, string> { ["DOTNET_GCHeapHardLimit"] = "4000000" }, command.Split(' '));

        Assert.Equal((1, ""), (result.Exit, result.Output));
        Assert.Matches("^[^ ]*huge.xml:1: .*(larger than|bytes)", Assert.Single(result.ErrorLines));
        AssertPlain(result);
    }

    [Fact]
    public async Task Plan_OfGoodFiles_PrintsOneJsonDocument()
    {
        var result = await CommandRun.RunAsync(Arguments(Plan));

        Assert.Equal((0, ""), (result.Exit, result.Errors));
        Assert.Equal("tern-hook", JsonDocument.Parse(result.Output).RootElement.GetProperty("garden").GetString());
    }

    [Fact]
    public async Task Clock_OfGoodFiles_PrintsOneJsonDocument()
    {
        var result = await CommandRun.RunAsync(Arguments(Clock + "good.txt --places good.csv"));

        Assert.Equal((0, ""), (result.Exit, result.Errors));
        Assert.Equal("Home", JsonDocument.Parse(result.Output).RootElement.EnumerateArray().Single().GetProperty("place").GetString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("serve")]
    [InlineData("check")]
    [InlineData("clock")]
    [InlineData("plan")]
    [InlineData("rehearse")]
    [InlineData("note")]
    [InlineData("note wind")]
    [InlineData("note leave-by")]
    [InlineData("note all-clear")]
    [InlineData("send-test")]
    public async Task Help_OfEveryCommand_IsPrintedAndIsNoFault(string command)
    {
        var result = await CommandRun.RunAsync([.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);

        Assert.Equal((0, ""), (result.Exit, result.Errors));
        Assert.Contains("Usage:", result.Output);
        Assert.Contains(command.Length == 0 ? "rehearse" : command, result.Output);
    }

    /// <summary>No word of exceptions, types or stacks; each line short enough to be read.</summary>
    private static void AssertPlain(CommandResult result)
    {
        Assert.DoesNotMatch(InnerWords(), result.Errors);
        Assert.All(result.ErrorLines, line => Assert.InRange(line.Length, 5, 400));
    }

    /// <summary>Names of files and folders in a command stand for those of the folder.</summary>
    private string[] Arguments(string command) =>
        [.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => IsPath(word) ? files.Path(word) : word)];

    private static bool IsPath(string word) => FileWords().IsMatch(word);

    [GeneratedRegex(@"Exception|StormClock\.|System\.|^\s+at ", RegexOptions.Multiline)]
    private static partial Regex InnerWords();

    [GeneratedRegex(@"^[a-z-]+\.(txt|xml|yaml|csv)$|^(out|data|empty|missing|installation|misspelt|no-password|no-server|noise-settings|folder-settings)$")]
    private static partial Regex FileWords();
}
