using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class DrawsTests
{
    private static double[] AllValues { get; } =
        [.. Enumerable.Range(0, Draws.Default.Members).SelectMany(m => Draws.Default.Of(m).ToArray()).Select(value => (double)value)];

    [Fact]
    public void Default_AllNumbers_AreUnitNormal()
    {
        // 370,000 numbers: standard errors of mean 0.0016, of variance 0.0023, of the fourth moment 0.016.
        Assert.Equal(370_000, AllValues.Length);
        Assert.Equal(0, AllValues.Average(), 0.008);
        Assert.Equal(1, AllValues.Average(value => value * value), 0.012);
        Assert.Equal(3, AllValues.Average(value => Math.Pow(value, 4)), 0.08);
        Assert.Equal(0.1587, AllValues.Count(value => value > 1) / (double)AllValues.Length, 0.003);
    }

    [Fact]
    public void Default_NeighbouringNumbers_AreUncorrelated() =>
        Assert.Equal(0, Enumerable.Range(1, AllValues.Length - 1).Average(i => AllValues[i] * AllValues[i - 1]), 0.008);

    [Fact]
    public void Of_Member_HoldsOneNumberPerErrorAndLeadAndOneMore() => Assert.Equal(37, Draws.Default.Of(0).Length);

    [Fact]
    public void Draws_OddLength_IsRefused() => Assert.Throws<ArgumentException>(() => new Draws(new float[38]));
}
