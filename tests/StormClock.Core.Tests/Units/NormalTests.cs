using CsCheck;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class NormalTests
{
    /// <summary>Standard tables of the normal distribution, from memory.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.8413447461)]
    [InlineData(-1, 0.1586552539)]
    [InlineData(1.2815515655, 0.9)]
    [InlineData(1.9599639845, 0.975)]
    [InlineData(3, 0.9986501020)]
    [InlineData(-4, 0.0000316712)]
    [InlineData(6, 0.9999999990)]
    public void Cdf_TableValues_Agree(double x, double chance) => Assert.Equal(chance, Normal.Cdf(x), 1e-9);

    [Fact]
    public void Cdf_AnyNumber_RisesAndIsSymmetric() =>
        Gen.Select(Gen.Double[-9, 9], Gen.Double[0, 1]).Sample((x, step) =>
        {
            Assert.Equal(1, Normal.Cdf(x) + Normal.Cdf(-x), 1e-12);
            Assert.True(Normal.Cdf(x + step) >= Normal.Cdf(x) - 1e-12);
        });

    [Fact]
    public void Cdf_FarOut_IsNoneOrAll()
    {
        Assert.Equal(0, Normal.Cdf(-60));
        Assert.Equal(1, Normal.Cdf(60));
        Assert.Equal(0, Normal.Cdf(double.NegativeInfinity));
        Assert.Equal(1, Normal.Cdf(double.PositiveInfinity));
    }
}
