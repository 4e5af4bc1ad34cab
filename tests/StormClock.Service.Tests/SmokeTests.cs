namespace StormClock.Service.Tests;

public class SmokeTests
{
    [Fact]
    public void Smoke_Always_Passes() => Assert.Equal(2, 1 + 1);
    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Smoke_Long_NotRun() => Assert.Equal(2, 1 + 1);
}
