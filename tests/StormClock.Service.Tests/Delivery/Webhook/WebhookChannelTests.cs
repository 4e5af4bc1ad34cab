using System.Security.Cryptography;
using System.Text;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Webhook;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Delivery.Webhook;

public class WebhookChannelTests
{
    private const string Secret = "an invented secret";

    private static readonly Instant Now = Entries.Start;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Send_Message_IsPostedAndSignedOverTimestampAndBody()
    {
        await using var stub = await PostStub.StartAsync();
        var outcome = await Channel(stub).SendAsync(Message("""{"title":"Stop by Tue 14:00 – now"}"""), Cancel);

        Assert.Equal(DeliveryResult.Delivered, outcome.Result);
        var post = Assert.Single(stub.Got);
        Assert.Equal(("/ada", "application/json; charset=utf-8"), (post.Path, post.Headers["Content-Type"]));
        Assert.Equal("""{"title":"Stop by Tue 14:00 – now"}""", Encoding.UTF8.GetString(post.Body));
        var timestamp = post.Headers["StormClock-Timestamp"];
        Assert.Equal($"{Now.ToUnixTimeSeconds()}", timestamp);
        byte[] signed = [.. Encoding.UTF8.GetBytes(timestamp + "."), .. post.Body];
        Assert.Equal($"v1={Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(Secret), signed))}", post.Headers["StormClock-Signature"]);
        Assert.Equal(Message("").EntryId, post.Headers["StormClock-Message"]);
    }

    [Theory]
    [InlineData(200, DeliveryResult.Delivered)]
    [InlineData(302, DeliveryResult.Refused)]
    [InlineData(404, DeliveryResult.Refused)]
    [InlineData(408, DeliveryResult.TryAgain)]
    [InlineData(410, DeliveryResult.Refused)]
    [InlineData(429, DeliveryResult.TryAgain)]
    [InlineData(500, DeliveryResult.TryAgain)]
    public async Task Send_Status_SaysWhatBecameOfIt(int status, DeliveryResult result)
    {
        await using var stub = await PostStub.StartAsync();
        stub.Status = _ => status;
        Assert.Equal(result, (await Channel(stub).SendAsync(Message("{}"), Cancel)).Result);
        Assert.Single(stub.Got);
    }

    [Fact]
    public async Task Send_PersonTakenOutOfTheSettings_IsRefused()
    {
        await using var stub = await PostStub.StartAsync();
        Assert.Equal(DeliveryResult.Refused, (await Channel(stub).SendAsync(Message("{}") with { ToAddress = "hollow/bo" }, Cancel)).Result);
        Assert.Empty(stub.Got);
    }

    /// <summary>Paths of gateways hold secrets.</summary>
    [Fact]
    public void Target_AsText_ShowsNoSecret() =>
        Assert.Equal("gateway.example.org", new WebhookTarget(new("https://gateway.example.org/hidden"), Encoding.UTF8.GetBytes(Secret)).ToString());

    private static WebhookChannel Channel(PostStub stub) => new(
        new Dictionary<string, WebhookTarget> { ["hollow/ada"] = new(new(stub.Address, "/ada"), Encoding.UTF8.GetBytes(Secret)) },
        new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }),
        new TestClock(Now));

    private static Outgoing Message(string body) => Entries.Make("main", channel: "webhook").Message with { ToAddress = "hollow/ada", Text = body };
}
