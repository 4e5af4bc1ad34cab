using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class BeaufortTests
{
    // trade.md 11, 4 and 1.3 (R).
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.3, 1)]
    [InlineData(7.9, 4)]
    [InlineData(8.0, 5)]
    [InlineData(17.1, 7)]
    [InlineData(17.2, 8)]
    [InlineData(24.4, 9)]
    [InlineData(32.6, 11)]
    [InlineData(32.7, 12)]
    [InlineData(70, 12)]
    public void Force_Edges_BelongToTheHigherForce(double mps, int expected) => Assert.Equal(expected, Beaufort.Force(mps));

    // trade.md 11, 1 (exact units).
    [Fact]
    public void Gale_34Kt_InOtherUnits()
    {
        Assert.Equal(17.49, Wind.KtToMps(Wind.GaleKt), 0.02);
        Assert.Equal(39.13, Wind.KtToMps(Wind.GaleKt) / Wind.MpsPerMph, 0.02);
        Assert.Equal(62.97, Wind.KtToMps(Wind.GaleKt) * 3.6, 0.02);
    }
}
