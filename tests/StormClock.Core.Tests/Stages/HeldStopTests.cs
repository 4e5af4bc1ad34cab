using StormClock.Core.Stages;

namespace StormClock.Core.Tests.Stages;

/// <summary>science.md 4.3: told times move earlier at once, later only by three hours and when confirmed once.</summary>
public class HeldStopTests
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 9, 22, 12, 0);

    private static readonly Instant Before = Noon - Duration.FromHours(30);

    private static Instant At(double hours) => Noon + Duration.FromHours(hours);

    /// <summary>The garden closes when people read that it does, and not some minutes after.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(14, 0)]
    [InlineData(-1, -15)]
    public void Stop_BetweenQuarters_IsTheOneBefore(int minutes, int quarter) =>
        Assert.Equal(Noon + Duration.FromMinutes(quarter), HeldStop.None.Next(Noon + Duration.FromMinutes(minutes), "a1", lastWord: false, Before).At);

    [Fact]
    public void Stop_ToldEarlier_MovesAtOnce() =>
        Assert.Equal(At(-0.25), new HeldStop(Noon, null).Next(At(-0.25), "a2", lastWord: false, Before).At);

    [Fact]
    public void Stop_ToldALittleLater_IsHeld() =>
        Assert.Equal(new HeldStop(Noon, null), new HeldStop(Noon, null).Next(At(2.9), "a2", lastWord: false, Before));

    [Fact]
    public void Stop_ToldMuchLater_MovesOnlyWhenASecondAdvisorySaysSo()
    {
        var once = new HeldStop(Noon, null).Next(At(4), "a2", lastWord: false, Before);
        Assert.Equal(Noon, once.At);
        Assert.Equal(Noon, once.Next(At(4), "a2", lastWord: false, Before).At);
        Assert.Equal(At(5), once.Next(At(5), "a3", lastWord: false, Before).At);
    }

    [Fact]
    public void Stop_NoLongerComing_IsHeldUntilConfirmedOrTheLastWord()
    {
        var once = new HeldStop(Noon, null).Next(null, "a2", lastWord: false, Before);
        Assert.Equal(Noon, once.At);
        Assert.Null(once.Next(null, "a3", lastWord: false, Before).At);
        Assert.Null(new HeldStop(Noon, null).Next(null, "a2", lastWord: true, Before).At);
    }

    [Fact]
    public void Stop_LaterThenBackAgain_NeedsTwoNewWords()
    {
        var held = new HeldStop(Noon, null).Next(At(4), "a2", false, Before).Next(At(1), "a3", false, Before).Next(At(4), "a4", false, Before);
        Assert.Equal(Noon, held.At);
    }

    [Fact]
    public void Stop_SilentSource_NeverMovesLater() =>
        Assert.Equal(Noon, new HeldStop(Noon, null).Next(At(4), null, false, Before).Next(At(4), null, false, Before).At);

    [Fact]
    public void Stop_LongPassedWithoutClosing_BindsNobody()
    {
        Assert.Equal(Noon, new HeldStop(Noon, null).Next(At(40), "a2", false, At(6)).At);
        Assert.Equal(At(40), new HeldStop(Noon, null).Next(At(40), "a2", false, At(6.1)).At);
    }
}
