using System.Security.Cryptography;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Delivery.Push;

/// <summary>The channel against a push service on loopback that keeps what it gets.</summary>
public sealed class PushChannelTests : IAsyncLifetime
{
    private static readonly Instant Now = Entries.Start;

    private readonly TempFolder folder = new();
    private readonly VapidKeys keys = new(ECDsa.Create(ECCurve.NamedCurves.nistP256));
    private readonly TestClock clock = new(Now);
    private readonly TestDevice phone = new();
    private readonly HttpClient client = PublicInternet.Client(allowLoopback: true);
    private StormStore store = null!;
    private PostStub stub = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private PushChannel Channel => new(store, keys, "mailto:garden@example.org", client, allowLoopback: true, clock);

    public async ValueTask InitializeAsync()
    {
        store = StormStore.Open(folder.Path);
        stub = await PostStub.StartAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await stub.DisposeAsync();
        store.Dispose();
        client.Dispose();
        phone.Dispose();
        keys.Dispose();
        folder.Dispose();
    }

    [Fact]
    public async Task Send_Message_ArrivesEncryptedWithItsTermsAndSignedForThePort()
    {
        await SubscribeAsync("d1", "/send/one");
        var outcome = await Channel.SendAsync(Message("d1", "Stop by Tue 14:00") with { UsefulUntil = Now + Duration.FromHours(2), Urgent = true }, Cancel);

        Assert.Equal(DeliveryResult.Delivered, outcome.Result);
        var post = Assert.Single(stub.Got);
        Assert.Equal("Stop by Tue 14:00", phone.Read(post.Body));
        Assert.Equal(
            ("/send/one", "7200", "high", "aes128gcm", "application/octet-stream"),
            (post.Path, post.Headers["TTL"], post.Headers["Urgency"], post.Headers["Content-Encoding"], post.Headers["Content-Type"]));
        Assert.Matches("^[0-9a-f]{32}$", post.Headers["Topic"]);
        var claims = VapidKeysTests.Verified(post.Headers["Authorization"], keys.PublicKey).Claims;
        Assert.Equal($"http://127.0.0.1:{stub.Address.Port}", claims.GetProperty("aud").GetString());
    }

    [Theory]
    [InlineData(-1.0, "0")]
    [InlineData(0.5, "1800")]
    [InlineData(24 * 40.0, "2419200")]
    public async Task Send_TimeOfUse_IsHowLongItIsKept(double hours, string ttl)
    {
        await SubscribeAsync("d1", "/send/one");
        await Channel.SendAsync(Message("d1", "x") with { UsefulUntil = Now + Duration.FromHours(hours) }, Cancel);
        Assert.Equal((ttl, "normal"), (Assert.Single(stub.Got).Headers["TTL"], stub.Got.First().Headers["Urgency"]));
    }

    [Theory]
    [InlineData(201, DeliveryResult.Delivered, true)]
    [InlineData(400, DeliveryResult.Refused, true)]
    [InlineData(403, DeliveryResult.Refused, true)]
    [InlineData(404, DeliveryResult.Refused, false)]
    [InlineData(410, DeliveryResult.Refused, false)]
    [InlineData(413, DeliveryResult.Refused, true)]
    [InlineData(429, DeliveryResult.TryAgain, true)]
    [InlineData(500, DeliveryResult.TryAgain, true)]
    [InlineData(503, DeliveryResult.TryAgain, true)]
    public async Task Send_Status_SettlesTheMessageAndEndsOnlyADeadSubscription(int status, DeliveryResult result, bool stays)
    {
        await SubscribeAsync("d1", "/send/one");
        await SubscribeAsync("d2", "/send/two");
        stub.Status = _ => status;
        Assert.Equal(result, (await Channel.SendAsync(Message("d1", "x"), Cancel)).Result);
        Assert.Equal((stays, true), (Has("d1"), Has("d2")));
    }

    [Fact]
    public async Task Send_DeadEndpointSharedByTwoPeople_EndsForBoth()
    {
        await SubscribeAsync("d1", "/send/one");
        await SubscribeAsync("d2", "/send/one", person: "bo");
        stub.Status = _ => 410;
        await Channel.SendAsync(Message("d1", "x"), Cancel);
        Assert.Equal((false, false), (Has("d1"), Has("d2")));
    }

    [Fact]
    public async Task Send_ServiceDown_IsTriedAgain()
    {
        await SubscribeAsync("d1", "/send/one");
        await stub.DisposeAsync();
        Assert.Equal(DeliveryResult.TryAgain, (await Channel.SendAsync(Message("d1", "x"), Cancel)).Result);
    }

    [Fact]
    public async Task Send_DeviceNotSubscribedOrOfTheHouse_IsRefusedUnsent()
    {
        Assert.Equal(DeliveryResult.Refused, (await Channel.SendAsync(Message("d9", "x"), Cancel)).Result);
        await SubscribeAsync("d1", "/send/one");
        var strict = new PushChannel(store, keys, null, client, allowLoopback: false, clock);
        Assert.Equal(DeliveryResult.Refused, (await strict.SendAsync(Message("d1", "x"), Cancel)).Result);
        Assert.Empty(stub.Got);
    }

    /// <summary>One of two devices is told to wait: only that one is tried again, and not after its time of use.</summary>
    [Fact]
    public async Task Outbox_OneDeviceBusy_TriesThatOneAgainAlone()
    {
        await SubscribeAsync("d1", "/send/one");
        await SubscribeAsync("d2", "/send/two");
        await store.WriteAsync(transaction =>
        {
            OutboxTable.Insert(transaction, Entry("d1"));
            OutboxTable.Insert(transaction, Entry("d2"));
        }, Cancel);
        var busy = true;
        stub.Status = path => busy && path == "/send/two" ? 429 : 201;
        stub.RetryAfter = "600";
        using var dispatcher = new Dispatcher(store, [Channel], clock);

        await dispatcher.RunAsync(Cancel);
        clock.Advance(Duration.FromMinutes(9));
        await dispatcher.RunAsync(Cancel);
        Assert.Equal(["/send/one", "/send/two"], stub.Got.Select(post => post.Path).Order());

        busy = false;
        clock.Advance(Duration.FromMinutes(2));
        await dispatcher.RunAsync(Cancel);
        Assert.Equal(["/send/one", "/send/two", "/send/two"], stub.Got.Select(post => post.Path).Order());
        var tries = stub.Got.Where(post => post.Path == "/send/two").ToList();
        Assert.Equal(tries[0].Headers["Topic"], tries[1].Headers["Topic"]);
        Assert.Equal(phone.Read(tries[0].Body), phone.Read(tries[1].Body));
        Assert.Equal(["21600", "20940"], tries.Select(post => post.Headers["TTL"]));
    }

    [Fact]
    public async Task Outbox_DeviceBusyUntilTheEndOfUse_ExpiresUnsent()
    {
        await SubscribeAsync("d1", "/send/one");
        await store.WriteAsync(transaction => OutboxTable.Insert(transaction, Entry("d1")), Cancel);
        stub.Status = _ => 503;
        using var dispatcher = new Dispatcher(store, [Channel], clock);
        for (var i = 0; i < 20; i++)
        {
            await dispatcher.RunAsync(Cancel);
            clock.Advance(Duration.FromMinutes(30));
        }

        Assert.Equal(OutboxState.Expired, store.Read(reader => OutboxTable.Find(reader, Entry("d1").Id))!.State);
        Assert.All(stub.Got, post => Assert.InRange(int.Parse(post.Headers["TTL"], System.Globalization.CultureInfo.InvariantCulture), 1, 6 * 3600));
    }

    private static OutboxEntry Entry(string device)
    {
        var entry = Entries.Make("main", channel: $"push:{device}");
        return entry with { Channel = "push", Message = entry.Message with { ToAddress = device } };
    }

    private static Outgoing Message(string device, string text) => Entry(device).Message with { Text = text };

    private Task SubscribeAsync(string id, string path, string person = "ada") => store.WriteAsync(transaction =>
        Subscriptions.Put(transaction, new(id, "hollow", person, "phone", new Uri(stub.Address, path).ToString(), phone.Keys, Now)));

    private bool Has(string id) => store.Read(reader => Subscriptions.Find(reader, id)) is not null;
}
