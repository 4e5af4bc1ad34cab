using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class LiftingTests
{
    // trade.md 11, 15 to 17 (form of NIOSH, R2): H, V, D, A, FM, CM, kg.
    [Theory]
    [InlineData(35, 10, 65, 0, 1, 0.90, 10.6)]
    [InlineData(25, 75, 25, 0, 1, 1, 23.0)]
    [InlineData(40, 30, 60, 30, 0.88, 0.95, 8.4)]
    public void Limit_WorkedExamples_AreThere(double reach, double hands, double raised, double twist, double frequency, double grip, double expected) =>
        Assert.Equal(expected, Lifting.LimitKg(reach, hands, raised, twist, frequency, grip), 0.1);

    [Fact]
    public void Limit_CloserThanTheBestReach_IsNeverAboveTheConstant() => Assert.Equal(23, Lifting.LimitKg(10, 75, 10), 1e-9);

    [Fact]
    public void Index_ThirtyKgPotFromTheGround_IsNearHigh() => Assert.Equal(2.8, Lifting.Index(30, Lifting.LimitKg(35, 10, 65, grip: 0.9)), 0.1); // check 15

    [Fact]
    public void Together_TwoLimits_IsTwoThirdsOfTheSum() => Assert.Equal(24, Lifting.TogetherKg(16, 20), 1e-9); // check 31, HSE (M)
}
