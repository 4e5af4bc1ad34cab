using CsCheck;
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
        Assert.Equal(At(arrival - spread), crossing.TotalTenPercent);
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

    /// <summary>Of 200 members 60 arrive, at 20, 20.5 … 49.5 h: the 20th brings the chance over all to 10 %, the 6th is the conditional tenth.</summary>
    [Theory]
    [InlineData(34, 29.5)]
    [InlineData(64, 26.5)]
    public void TotalTenPercent_SomeArrive_IsWhenATenthOfAllHave(double threshold, double expected)
    {
        var crossing = WindCrossing.Of(Members(threshold, Arriving(60, of: 200)), threshold, Origin);
        Assert.Equal(At(expected), crossing.TotalTenPercent);
        Assert.True(crossing.EarliestReasonable < crossing.TotalTenPercent);
    }

    [Theory]
    [InlineData(19, false)]
    [InlineData(20, true)]
    public void TotalTenPercent_ChanceAboutTen_IsAbsentBelow(int arrived, bool has) =>
        Assert.Equal(has, WindCrossing.Of(Members(34, Arriving(arrived, of: 200)), 34, Origin).TotalTenPercent is not null);

    [Fact]
    public void TotalTenPercent_AnyMembers_IsNeverBeforeTheConditionalOne() =>
        Gen.Select(Gen.Int[1, 300], Gen.Int[1, 300]).Sample((some, others) =>
        {
            var crossing = WindCrossing.Of(Members(34, Arriving(some, of: some + others)), 34, Origin);
            var has = some * 10 >= some + others;
            return crossing.TotalTenPercent is { } total ? has && total >= crossing.EarliestReasonable : !has;
        });

    private static float[] Arriving(int arrived, int of) => [.. Enumerable.Range(0, of).Select(i => i < arrived ? 20 + i * 0.5f : float.NaN)];

    private static Instant At(double hours) => Origin + Duration.FromHours(hours);

    /// <summary>Each member's wind lasts 10 h.</summary>
    private static WindMembers Members(double threshold, float[] arrivals) => new(
        Origin, [threshold], [arrivals], [arrivals.Select(arrival => arrival + 10).ToArray()], new float[arrivals.Length], 120);
}
