using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class StrengthBeliefTests
{
    private static readonly StrengthBelief Prior = StrengthBelief.Before(25);

    public static TheoryData<StormOutcome[], double, double> L9() => new()
    {
        // science.md 9, L9 (D): median, σ of the logarithm.
        { [Held(22)], 29.15, 0.225 },
        { [Failed(30)], 21.94, 0.232 },
        { [Held(22), Failed(30)], 25.51, 0.151 },
        { [Held(22), Held(24), Held(26)], 33.15, 0.187 },
    };

    [Theory]
    [MemberData(nameof(L9))]
    public void After_L9_MovesTowardsWhatWasSeen(StormOutcome[] outcomes, double median, double sigma)
    {
        var belief = Prior.After(outcomes);
        Assert.Equal(median, belief.MedianMps, 0.02);
        Assert.Equal(sigma, belief.SigmaLn, 0.002);
        Assert.Equal(outcomes.Length, belief.Outcomes);
    }

    [Fact]
    public void After_HeldFarBelow_HardlyMoves() => Assert.Equal(25, Prior.After([Held(10)]).MedianMps, 0.1); // science.md 5.5

    [Fact]
    public void After_ForecastGust_MovesLessThanAMeasuredOne() =>
        Assert.InRange(Prior.After([new(22, Held: true, Measured: false)]).MedianMps, 25.1, Prior.After([Held(22)]).MedianMps - 0.1);

    [Fact]
    public void After_ManyImpossibleOutcomes_StaysAsItWas() =>
        Assert.Equal(Prior, Prior.After([.. Enumerable.Repeat(Held(100), 40), .. Enumerable.Repeat(Failed(5.1), 40)]));

    private static StormOutcome Held(double gust) => new(gust, Held: true, Measured: true);

    private static StormOutcome Failed(double gust) => new(gust, Held: false, Measured: true);
}
