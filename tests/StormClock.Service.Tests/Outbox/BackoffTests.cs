using StormClock.Service.Outbox;

namespace StormClock.Service.Tests.Outbox;

public class BackoffTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    [InlineData(3, 5)]
    [InlineData(4, 10)]
    [InlineData(5, 20)]
    [InlineData(6, 30)]
    [InlineData(7, 30)]
    [InlineData(1000, 30)]
    public void After_SoManyTries_WaitsMinutes(int attempts, int minutes) => Assert.Equal(Duration.FromMinutes(minutes), Backoff.After(attempts));

    [Theory]
    [InlineData(1, 7200, 7200)]
    [InlineData(6, 300, 300)]
    // A word of "at once" still leaves the other side a minute.
    [InlineData(6, 0, 60)]
    [InlineData(1, -5, 60)]
    public void After_TheOtherSideSaidHowLong_IsHonoured(int attempts, int toldSeconds, int seconds) =>
        Assert.Equal(Duration.FromSeconds(seconds), Backoff.After(attempts, Duration.FromSeconds(toldSeconds)));
}
