using System.CommandLine;
using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Service.Feeds;

namespace StormClock.Service.Commands;

/// <summary><c>plan</c>: the plan for a garden from given advisories at a given time.</summary>
internal static class PlanCommand
{
    /// <summary>Beyond this no forecast reaches.</summary>
    private static readonly Duration LongestForecast = Duration.FromDays(5);

    public static Command Make()
    {
        var garden = new Option<string>("--garden") { Required = true, Description = "The garden book (YAML)." };
        var advisories = new Option<string>("--advisories") { Required = true, Description = "An advisory text or alert, or a folder of them." };
        var now = new Option<string>("--now") { Required = true, Description = "The time to plan at, such as 2027-09-12T10:00Z. Messages issued later are not yet known." };
        var at = new Option<string?>("--at") { Description = "Move the garden's sites to LAT,LON, keeping their distances." };
        var done = new Option<string?>("--done") { Description = "A file with a line for each job: job id, state (done, cannot, later, started), time." };
        var sheet = new Option<string?>("--sheet") { Description = "Write the plan as a PDF to print." };
        var picture = new Option<string?>("--picture") { Description = "Write the plan's time line as an SVG picture." };
        var json = new Option<bool>("--json") { Description = "One JSON document on stdout and nothing else." };
        var command = new Command("plan", "What to do in which order by when, and what to leave.") { garden, advisories, now, at, done, sheet, picture, json };
        command.SetAction(parsed => Run(
            parsed.GetValue(garden)!, parsed.GetValue(advisories)!, parsed.GetValue(now)!, parsed.GetValue(at), parsed.GetValue(done),
            new(parsed.GetValue(sheet), parsed.GetValue(picture)), parsed.GetValue(json)));
        return command;
    }

    private static int Run(string gardenFile, string advisoriesPath, string nowText, string? atText, string? doneFile, PlanFiles files, bool json)
    {
        var inputs = new Inputs();
        var book = inputs.Garden(gardenFile);
        var heard = inputs.Advisories(advisoriesPath);
        var now = inputs.Time(nowText, "--now");
        var at = inputs.Place(atText, "--at");
        var states = book is null ? [] : DoneFile.Read(inputs, doneFile, book, now);
        if (inputs.Report()) return ExitCode.BadInput;

        if (FarFrom(heard, now!.Value) is { } far) Console.Error.WriteLine(far);
        var garden = at is { } place ? MovedGarden.To(book!, place) : book!;
        var ledger = heard.Aggregate(AdvisoryLedger.Empty, (ledger, entry) => ledger.With(entry.Advisory, entry.Advisory.Issued));
        var decision = new StormDesk().Decide(ledger, garden, GardenStanding.Calm(now.Value), states, new Dictionary<string, Instant>(), now.Value);
        if (json) Json.Print(PlanDocument.Of(garden, decision, now.Value));
        else PlanPrint.Write(Console.Out, garden, decision, now.Value);
        return files.Write(garden, decision, now.Value);
    }

    /// <summary>Said where no message speaks of that time; null where one may.</summary>
    private static string? FarFrom(IReadOnlyList<(Advisory Advisory, RawMessage Raw)> heard, Instant now)
    {
        if (heard.Count == 0) return null;
        var (first, last) = (heard[0].Advisory.Issued, heard[^1].Advisory.Issued);
        return now < first || now > last + LongestForecast
            ? $"--now: the messages were issued from {first:uuuu-MM-dd'T'HH:mm'Z'} to {last:uuuu-MM-dd'T'HH:mm'Z'}, and say nothing of {now:uuuu-MM-dd'T'HH:mm'Z'}"
            : null;
    }
}
