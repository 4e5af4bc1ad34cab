using System.CommandLine;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Commands;

/// <summary><c>send-test</c>: one test message to a person on a channel.</summary>
internal static class SendTestCommand
{
    public static Command Make()
    {
        var to = new Option<string>("--to") { Required = true, Description = "Id of a person in one of the gardens." };
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files." };
        var data = new Option<string?>("--data") { Description = "Data folder, in place of the one in the settings." };
        var command = new Command("send-test", "Send one test message to a person, to see that it arrives.") { to, config, data };
        command.SetAction((parsed, cancellation) => RunAsync(parsed.GetValue(to)!, parsed.GetValue(config), parsed.GetValue(data), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string to, string? config, string? data, CancellationToken cancellation)
    {
        var inputs = new Inputs();
        var installation = Installation.Load(inputs, config, data);
        var channel = installation?.Channel(inputs);
        var people = installation is null ? [] : GardenFiles.Load(installation.GardensFolder)
            .SelectMany(file => (file.InForce?.People ?? []).Select(person => (Garden: file.InForce!.Id, Person: person))).ToList();
        var (garden, person) = people.FirstOrDefault(known => known.Person.Id == to);
        if (installation is not null && person?.Email is null)
        {
            inputs.Fault(person is null ? $"--to: there is no person '{to}'; {(people.Count == 0 ? $"there is nobody in {installation.GardensFolder}" : $"known: {string.Join(", ", people.Select(known => known.Person.Id).Distinct())}")}" : $"--to: '{to}' has no email in the garden book");
        }

        if (inputs.Report()) return ExitCode.BadInput;
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        var outcome = await channel!.SendAsync(TestMessage.To(person!, PushLink(installation!, garden, person!.Id, now), now), cancellation);
        await channel.RestAsync();
        if (outcome.Result == DeliveryResult.Delivered)
        {
            Console.WriteLine($"delivered to {person.Email}: {outcome.Detail}");
            return ExitCode.Good;
        }

        var way = installation!.Settings.Mail is { } mail ? $" through {mail.Host}:{mail.Port}" : "";
        await Console.Error.WriteLineAsync($"not delivered to {person.Email}{way}: {outcome.Detail}");
        return ExitCode.OutsideTrouble;
    }

    /// <summary>Setting up notifications is best done before a storm, so a test message brings the way to it; null where there are none.</summary>
    private static string? PushLink(Installation installation, string gardenId, string personId, Instant now)
    {
        if (installation.Push is null) return null;

        var keys = AckKeyFile.ReadOrMake(Path.Combine(Directory.CreateDirectory(installation.Settings.DataFolder).FullName, AckKeyFile.Name));
        return keys.Value is { } ring ? new LinkMaker(installation.Settings.Pages.Address, ring.Newest, offersPush: true).ForPush(gardenId, personId, now) : null;
    }
}
