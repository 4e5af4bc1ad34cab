using System.Net;
using System.Net.Http.Headers;
using StormClock.Service.Delivery;

namespace StormClock.Service.Tests.Delivery;

public class HttpAnswersTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 9, 20, 10, 0);

    [Theory]
    [InlineData(200, DeliveryResult.Delivered)]
    [InlineData(201, DeliveryResult.Delivered)]
    [InlineData(202, DeliveryResult.Delivered)]
    [InlineData(204, DeliveryResult.Delivered)]
    [InlineData(301, DeliveryResult.Refused)]
    [InlineData(307, DeliveryResult.Refused)]
    [InlineData(400, DeliveryResult.Refused)]
    [InlineData(401, DeliveryResult.Refused)]
    [InlineData(403, DeliveryResult.Refused)]
    [InlineData(404, DeliveryResult.Refused)]
    [InlineData(408, DeliveryResult.TryAgain)]
    [InlineData(410, DeliveryResult.Refused)]
    [InlineData(413, DeliveryResult.Refused)]
    [InlineData(429, DeliveryResult.TryAgain)]
    [InlineData(500, DeliveryResult.TryAgain)]
    [InlineData(502, DeliveryResult.TryAgain)]
    [InlineData(503, DeliveryResult.TryAgain)]
    [InlineData(507, DeliveryResult.TryAgain)]
    public void Status_OfAnAnswer_SaysWhatBecameOfIt(int status, DeliveryResult result)
    {
        var outcome = HttpAnswers.Of((HttpStatusCode)status, null, Now);
        Assert.Equal((result, (Duration?)null), (outcome.Result, outcome.After));
        Assert.Contains($"{status}", outcome.Detail);
    }

    [Fact]
    public void RetryAfter_InSecondsOrAsATime_IsHonoured()
    {
        Assert.Equal(Duration.FromSeconds(90), HttpAnswers.Of((HttpStatusCode)429, RetryConditionHeaderValue.Parse("90"), Now).After);
        Assert.Equal(Duration.FromMinutes(5), HttpAnswers.Of((HttpStatusCode)503, RetryConditionHeaderValue.Parse("Mon, 20 Sep 2027 10:05:00 GMT"), Now).After);
    }
}
