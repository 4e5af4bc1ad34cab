using System.Globalization;
using System.Text.Json;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Delivery.Email;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The practice storm rehearsed once over a real mail server, with every link pressed in time; the tests look at what came of it.</summary>
public sealed class PracticeRun : IAsyncLifetime
{
    private readonly TempFolder folder = new();

    internal CommandResult Result { get; private set; } = null!;

    internal SmtpHost Server { get; } = new();

    /// <summary>The events in their order.</summary>
    internal IReadOnlyList<JsonElement> Events { get; private set; } = [];

    internal IReadOnlyList<OutboxEntry> Outbox { get; private set; } = [];

    internal IReadOnlyList<JobState> Jobs { get; private set; } = [];

    internal AckKeyRing Keys { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        var data = folder.File("data");
        Result = await CommandRun.RunAsync(
            "rehearse", "--json", "--acks", "prompt", "--smtp", string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{Server.Port}"),
            "--data", data, "--out", folder.File("out"), "--config", ConfigFiles.Folder);
        Events = [.. JsonDocument.Parse(Result.Output).RootElement.EnumerateArray()];
        Keys = AckKeyFile.ReadOrMake(Path.Combine(data, "link-keys")).Value!;
        using var store = StormStore.Open(data);
        Outbox = store.Read(reader => OutboxTable.OfGarden(reader, "tern-hook"));
        Jobs = store.Read(reader => JobStates.OfEpisode(reader, "tern-hook", ReminderEpisode(Outbox[0])));
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        folder.Dispose();
    }

    /// <summary>The second part of a reminder key (product.md 3).</summary>
    private static string ReminderEpisode(OutboxEntry entry) => entry.Key.Split('|')[1];
}
