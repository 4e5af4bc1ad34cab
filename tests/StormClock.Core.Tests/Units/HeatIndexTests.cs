using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class HeatIndexTests
{
    /// <summary>The weather service's chart in whole °F (from memory); the last three by its regression worked out by hand.</summary>
    [Theory]
    [InlineData(80, 40, 80)]
    [InlineData(86, 90, 105)]
    [InlineData(90, 60, 100)]
    [InlineData(96, 50, 108)]
    [InlineData(100, 40, 109)]
    [InlineData(104, 40, 119)]
    [InlineData(70, 50, 69)]
    public void HeatIndex_Chart_IsMet(double airF, double humidityPercent, double heatF) =>
        Assert.Equal(heatF, Math.Round((HeatIndex.OfC((airF - 32) / 1.8, humidityPercent / 100) * 1.8) + 32), 1.0);
}
