using StormClock.Service.Delivery.Email;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Delivery.Email;

/// <summary>
/// Three letters to three people meet a mail server that fails, and then one that is mended: who is settled how, how often each
/// letter arrives, and always under one Message-ID.
/// </summary>
public sealed class SmtpFaultTests : IDisposable
{
    private const OutboxState Waits = OutboxState.Waiting;
    private const OutboxState Parked = OutboxState.Refused;
    private static readonly string[] People = ["ada", "bo", "cy"];

    /// <param name="States">Of the three after the fault.</param>
    /// <param name="Connections">Made in the first run.</param>
    /// <param name="Copies">Of each letter in the end: two where the first one's answer was lost.</param>
    private sealed record Fault((string, string?)[] Script, OutboxState[] States, int Connections, int[] Copies);

    // RFC 5321: 4.2.1 (4xx may come right, 5xx never), 3.8 (421 closes the channel), 4.5.3.2 (timeouts); RFC 4954: 6 (535).
    private static readonly Dictionary<string, Fault> Faults = new()
    {
        ["greeting refused"] = new([("greeting", "554 no service here")], [Waits, Waits, Waits], 1, [1, 1, 1]),
        ["AUTH wrong"] = new([("EHLO", "250-localhost\r\n250 AUTH PLAIN"), ("AUTH", "535 5.7.8 wrong")], [Waits, Waits, Waits], 1, [1, 1, 1]),
        ["421 to each letter"] = new([("MAIL", "421 closing")], [Waits, Waits, Waits], 3, [1, 1, 1]),
        ["451 after the content"] = new([("content", "451 disk")], [Waits, Waits, Waits], 1, [1, 1, 1]),
        ["552 after the content"] = new([("content", "552 too big")], [Parked, Parked, Parked], 1, [0, 0, 0]),
        ["550 for one of three"] = new([("RCPT TO:<bo@", "550 nobody here")], [OutboxState.Sent, Parked, OutboxState.Sent], 1, [1, 0, 1]),
        ["450 for one of three"] = new([("RCPT TO:<bo@", "450 busy")], [OutboxState.Sent, Waits, OutboxState.Sent], 1, [1, 1, 1]),
        ["TLS refused"] = new([("EHLO", "250-localhost\r\n250 STARTTLS"), ("STARTTLS", "454 4.7.0 not now")], [Waits, Waits, Waits], 1, [1, 1, 1]),
        ["TLS breaks off"] = new([("EHLO", "250-localhost\r\n250 STARTTLS"), ("STARTTLS", null)], [Waits, Waits, Waits], 1, [1, 1, 1]),
        ["no TLS offered"] = new([("EHLO", "250 localhost")], [Waits, Waits, Waits], 1, [1, 1, 1]),
        ["stall at DATA"] = new([("DATA", ScriptedServer.Silence)], [Waits, Waits, Waits], 3, [1, 1, 1]),
        ["stall after the final dot"] = new([("content", ScriptedServer.Silence)], [Waits, Waits, Waits], 3, [2, 2, 2]),
        ["drop after the final dot"] = new([("content", null)], [Waits, Waits, Waits], 3, [2, 2, 2]),
    };

    private readonly TempFolder folder = new();
    private readonly TestClock clock = new(Entries.Start);
    private readonly StormStore store;

    public SmtpFaultTests() => store = StormStore.Open(folder.Path);

    public static TheoryData<string> Names => [.. Faults.Keys];

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Outbox_ServerFailsThenIsMended_SettlesEachRightlyAndSendsWhatWaits(string name)
    {
        var fault = Faults[name];
        await using var server = new ScriptedServer(fault.Script);
        var entries = People.Select(Letter).ToList();
        await store.WriteAsync(tx => entries.ForEach(entry => OutboxTable.Insert(tx, entry)), TestContext.Current.CancellationToken);
        var settings = Letters.Settings(server.Port, timeoutSeconds: 1);
        if (name.Contains("AUTH", StringComparison.Ordinal)) settings = settings with { User = "box", Password = "guess" };

        await RunAsync(name.Contains("TLS", StringComparison.Ordinal) ? settings with { Security = EmailSecurity.StartTls } : settings);

        Assert.Equal(fault.States, entries.Select(entry => Find(entry).State));
        Assert.Equal(fault.Connections, server.Connections);
        Assert.All(entries.Select(Find).Where(entry => entry.State == Waits), entry => Assert.Equal(Entries.Start + Duration.FromMinutes(1), entry.NextTry));

        server.Follow();
        clock.Advance(Duration.FromMinutes(1));
        await RunAsync(Letters.Settings(server.Port));

        Assert.Equal(fault.States.Select(state => state == Waits ? OutboxState.Sent : state), entries.Select(entry => Find(entry).State));
        Assert.Equal(fault.Copies, entries.Select(entry => server.Arrived.Count(id => id == $"<{entry.Message.MessageId}>")));
        Assert.Equal(fault.Copies.Sum(), server.Arrived.Count);
    }

    private static OutboxEntry Letter(string person)
    {
        var entry = Entries.Make(person);
        return entry with { Message = entry.Message with { ToAddress = $"{person}@garden.example" }, Moment = Entries.Start + Duration.FromTicks(-3 + Array.IndexOf(People, person)) };
    }

    private OutboxEntry Find(OutboxEntry entry) => store.Read(reader => OutboxTable.Find(reader, entry.Id))!;

    private async Task RunAsync(EmailSettings settings)
    {
        using var dispatcher = new Dispatcher(store, [new SmtpChannel(settings)], clock);
        await dispatcher.RunAsync(TestContext.Current.CancellationToken);
    }
}
