using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class HangingTests
{
    // science.md 9, L7 (D): 5 kg, Cd A 0.056 m².
    [Fact]
    public void Basket_L7_SwingsFurtherInMoreWind()
    {
        Assert.Equal(8.95, Hanging.SwingDeg(15, 5, 0.056), 0.05);
        Assert.Equal(49.7, Hanging.SwingsAtMps(5, 0.056, 60), 0.05);
        Assert.Equal(Hanging.LimitDeg, Hanging.SwingDeg(Hanging.SwingsAtMps(5, 0.056), 5, 0.056), 1e-9);
    }
}
