using System.CommandLine;
using System.CommandLine.Parsing;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Service.Feeds;
using StormClock.Service.Rehearsal;
using StormClock.Service.Store;

namespace StormClock.Service.Commands;

/// <summary><c>rehearse</c>: plays a folder of advisories through the real host in virtual time.</summary>
internal static class RehearseCommand
{
    /// <summary>The garden that the practice storm is made for.</summary>
    internal const string PracticeGarden = "garden-tern-hook.yaml";

    public static Command Make()
    {
        var advisories = new Option<string?>("--advisories") { Description = "A folder of advisories and alerts, a file, or a folder that serve --record has filled. Default: the practice storm." };
        var garden = new Option<string?>("--garden") { Description = "A garden book. Default: a practice garden." };
        var at = new Option<string?>("--at") { Description = "Move the garden's sites to LAT,LON, so that any storm can be tried." };
        var acks = new Option<Acks>("--acks") { DefaultValueFactory = _ => Acks.Prompt, CustomParser = ReadAcks, Description = "How people press their links: none, prompt or late." };
        var output = new Option<string?>("--out") { Description = "Folder for the messages and the log. Default: rehearsal/ here; what an earlier rehearsal left in it is replaced." };
        var data = new Option<string?>("--data") { Description = "Keep the rehearsal's database in this folder; a rehearsal that was broken off there goes on." };
        var smtp = new Option<string?>("--smtp") { Description = "Send to a mail server on this machine, 127.0.0.1:PORT, in place of writing .eml files." };
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files." };
        var json = new Option<bool>("--json") { Description = "One JSON array of events on stdout and nothing else." };
        var command = new Command("rehearse", "Play a storm through the whole service in virtual time: decisions, mails, links, recheck. Nothing is sent to anybody.")
        {
            advisories, garden, at, acks, output, data, smtp, config, json,
        };
        command.SetAction(parsed => RunAsync(new(
            parsed.GetValue(advisories), parsed.GetValue(garden), parsed.GetValue(at), parsed.GetValue(acks), parsed.GetValue(output) ?? "rehearsal",
            parsed.GetValue(data), parsed.GetValue(smtp), parsed.GetValue(config), parsed.GetValue(json))));
        return command;
    }

    private static Acks ReadAcks(ArgumentResult given)
    {
        var word = given.Tokens[0].Value;
        foreach (var acks in Enum.GetValues<Acks>())
        {
            if (acks.ToString().Equals(word, StringComparison.OrdinalIgnoreCase)) return acks;
        }

        given.AddError($"--acks: '{word}' is not one of none, prompt, late");
        return default;
    }

    private sealed record Options(
        string? Advisories, string? Garden, string? At, Acks Acks, string Output, string? Data, string? Smtp, string? Config, bool Json);

    private static async Task<int> RunAsync(Options options)
    {
        var inputs = new Inputs();
        inputs.GivenFolder(options.Config, "--config");
        inputs.WritableFolder(options.Output, "--out");
        if (options.Data is null && RehearsalFolders.Foreign(options.Output) is { } foreign) inputs.Fault($"--out: {foreign} is not of a rehearsal and would be replaced; name another folder");
        inputs.WritableFolder(options.Data, "--data");
        var practice = ConfigFolder.Practice(options.Config);
        var book = inputs.Garden(options.Garden ?? Path.Combine(practice, PracticeGarden));
        var heard = inputs.Heard(options.Advisories ?? Path.Combine(practice, "storm"));
        var at = inputs.Place(options.At, "--at");
        var server = LoopbackServer.Read(inputs, options.Smtp);
        if (inputs.Report()) return ExitCode.BadInput;

        var garden = at is { } place ? MovedGarden.To(book!, place) : book!;
        try
        {
            var plan = new RehearsalPlan(garden, heard, options.Acks, options.Output, options.Data, server);
            var events = await Rehearsal.Rehearsal.RunAsync(plan, options.Json ? TextWriter.Null : Console.Out);
            if (options.Json) Json.Print(events.Select(RehearsalEvent.Of).ToList());
            return ExitCode.Good;
        }
        catch (Exception trouble) when (ExitCode.IsOutsideTrouble(trouble))
        {
            await Console.Error.WriteLineAsync(trouble.Message);
            return ExitCode.OutsideTrouble;
        }
    }
}
