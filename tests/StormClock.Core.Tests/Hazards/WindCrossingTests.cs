using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

public class WindCrossingTests
{
    private static readonly Instant Origin = Instant.FromUtc(2030, 9, 1, 0, 0);

    [Fact]
    public void Of_ManyMembers_TakesQuantilesOfThoseThatArrive()
    {
        // 101 members arrive at 20, 20.5 … 70 h, another 101 never.
        var arrivals = Enumerable.Range(0, 101).Select(i => 20 + i * 0.5f).Concat(Enumerable.Repeat(float.NaN, 101)).ToArray();
        var crossing = WindCrossing.Of(Members(34, arrivals), 34, Origin);
        Assert.Equal(0.5, crossing.Chance);
        Assert.Equal(At(25), crossing.EarliestReasonable);
        Assert.Equal(At(45), crossing.MostLikely);
        Assert.Equal(At(65), crossing.Latest);
        Assert.Equal(At(55), crossing.End);
        Assert.Equal([12, 24, 36, 48, 72, 96, 120], crossing.ChanceBy.Keys);
        Assert.Equal(9 / 202.0, crossing.ChanceBy[24], 1e-12);
        Assert.Equal(0.5, crossing.ChanceBy[72], 1e-12);
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(5, true)]
    public void Of_AlmostNever_HasNoTimes(int arrived, bool hasTimes)
    {
        var arrivals = Enumerable.Range(0, 1000).Select(i => i < arrived ? 30f : float.NaN).ToArray();
        var crossing = WindCrossing.Of(Members(34, arrivals), 34, Origin);
        Assert.Equal(arrived / 1000.0, crossing.Chance);
        Assert.Equal(hasTimes, crossing.MostLikely is not null);
        Assert.Equal(hasTimes, crossing.End is not null);
    }

    // 15 % of the time from now, at least 3 h.
    [Theory]
    [InlineData(43, 3, 6)]
    [InlineData(13, 3, 3)]
    public void Of_SingleMember_SpreadsByItsLead(float arrival, int nowHours, double spread)
    {
        var crossing = WindCrossing.Of(Members(34, [arrival]), 34, At(nowHours));
        Assert.Equal(At(arrival - spread), crossing.EarliestReasonable);
        Assert.Equal(At(arrival), crossing.MostLikely);
        Assert.Equal(At(arrival + spread), crossing.Latest);
        Assert.Equal(1, crossing.Chance);
    }

    [Fact]
    public void Of_SingleMemberThatMisses_HasNoTimes()
    {
        var crossing = WindCrossing.Of(Members(34, [float.NaN]), 34, Origin);
        Assert.Equal(0, crossing.Chance);
        Assert.Null(crossing.EarliestReasonable);
    }

    [Fact]
    public void Of_HurricaneForce_IsThreeHoursEarlierAtTheEarly()
    {
        var arrivals = Enumerable.Range(0, 101).Select(i => 20 + i * 0.5f).ToArray();
        var crossing = WindCrossing.Of(Members(64, arrivals), 64, Origin);
        Assert.Equal(At(22), crossing.EarliestReasonable);
        Assert.Equal(At(45), crossing.MostLikely);
    }

    private static Instant At(double hours) => Origin + Duration.FromHours(hours);

    /// <summary>Each member's wind lasts 10 h.</summary>
    private static WindMembers Members(double threshold, float[] arrivals) => new(
        Origin, [threshold], [arrivals], [arrivals.Select(arrival => arrival + 10).ToArray()], new float[arrivals.Length], 120);
}
