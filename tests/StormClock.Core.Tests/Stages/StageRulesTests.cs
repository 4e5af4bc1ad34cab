using StormClock.Core.Stages;

namespace StormClock.Core.Tests.Stages;

public class StageRulesTests
{
    private static readonly Instant Start = Instant.FromUtc(2027, 9, 1, 3, 0);

    private static StageSigns Signs(Instant now, double chance, double earliestHours, string? advisory = "a", bool warned = false) =>
        new(
            now, chance, chance > 0 ? now + Duration.FromHours(earliestHours) : null,
            chance > 0 ? now + Duration.FromHours(earliestHours - 1) : null,
            warned, Unmatched: false, OfficialOrder.None, null, null, advisory, LastWord: false, WindOver: false, OfficialEnd: true, Daylight: true,
            new("Test advisory", now, warned ? "Warning" : null, null));

    /// <summary>Limits of science.md 4.3 (conventions of this project, mark C), each edge from both sides.</summary>
    [Theory]
    [InlineData(0.09, 100, Stage.NothingDue)]
    [InlineData(0.10, 100, Stage.LookOver)]
    [InlineData(0.24, 100, Stage.LookOver)]
    [InlineData(0.25, 100, Stage.SlowWork)]
    [InlineData(0.10, 72, Stage.SlowWork)]
    [InlineData(0.50, 73, Stage.SlowWork)]
    [InlineData(0.50, 72, Stage.MainWork)]
    [InlineData(0.10, 36, Stage.MainWork)]
    [InlineData(0.10, 12, Stage.LastRound)]
    [InlineData(0.10, 1, Stage.GardenClosed)]
    [InlineData(0.09, 1, Stage.NothingDue)]
    public void Ladder_AtEachLimit_ReadsTheRung(double chance, double earliestHours, Stage expected) =>
        Assert.Equal(expected, StageLadder.Read(Signs(Start, chance, earliestHours)).Stage);

    /// <summary>Where it only makes a chance larger that was enough already, the forecast is named with its own.</summary>
    [Theory]
    [InlineData(0.30, 100, "IAN advisory 16", 0.30)] // both bring Slow work
    [InlineData(0.24, 100, "IAN table", 0.48)] // only the table does
    [InlineData(0.12, 10, "IAN advisory 16", 0.12)] // both bring Last round
    [InlineData(0.09, 10, "IAN table", 0.48)]
    public void Ladder_OfficialChanceIsLarger_IsNamedOnlyWhereItDecides(double own, double earliestHours, string source, double chance)
    {
        var signs = Signs(Start, 0.48, earliestHours) with
        {
            Why = new("IAN advisory 16", Start, null, null) { Larger = new("IAN table", Start, own) },
        };
        var reason = StageLadder.Read(signs).Reason;
        Assert.Equal((source, chance), (reason.Source, reason.Chance));
    }

    [Fact]
    public void Ladder_WarningStands_IsMainWorkAtLeast() =>
        Assert.Equal(Stage.MainWork, StageLadder.Read(Signs(Start, 0.02, 60, warned: true)).Stage);

    [Fact]
    public void Ladder_LeaveByPassed_ClosesWhateverTheForecast()
    {
        var signs = Signs(Start, 0, 0) with { LeaveBy = Start };
        Assert.Equal((Stage.GardenClosed, StageCause.Order), (StageLadder.Read(signs).Stage, StageLadder.Read(signs).Reason.Cause));
    }

    /// <summary>Vector H1 of science.md 9: no warning, 36 h &lt; t10c ≤ 72 h.</summary>
    [Fact]
    public void Stage_ChanceFallsSlowlyOverAdvisories_FallsOnceConfirmed()
    {
        double[] chances = [0.30, 0.55, 0.48, 0.46, 0.38, 0.38];
        Stage[] expected = [Stage.SlowWork, Stage.MainWork, Stage.MainWork, Stage.MainWork, Stage.MainWork, Stage.SlowWork];
        var standing = StageStanding.Calm(Start);
        for (var i = 0; i < chances.Length; i++)
        {
            var now = Start + Duration.FromHours(6 * i);
            standing = StageRules.Next("g", standing, Signs(now, chances[i], 60, $"a{i}"));
            Assert.Equal(expected[i], standing.Stage);
        }
    }

    [Fact]
    public void Stage_SameAdvisoryReadTwice_DoesNotConfirmAFall()
    {
        var standing = StageRules.Next("g", StageStanding.Calm(Start), Signs(Start, 0.55, 60, "a0"));
        standing = StageRules.Next("g", standing, Signs(Start + Duration.FromHours(12), 0.02, 60, "a1"));
        standing = StageRules.Next("g", standing, Signs(Start + Duration.FromHours(13), 0.02, 60, "a1"));
        Assert.Equal(Stage.MainWork, standing.Stage);
    }

    [Fact]
    public void Stage_FeedSilent_NeverFalls()
    {
        var standing = StageRules.Next("g", StageStanding.Calm(Start), Signs(Start, 0.55, 60, "a0"));
        foreach (var hours in new[] { 12, 24, 48, 96 })
        {
            standing = StageRules.Next("g", standing, Signs(Start + Duration.FromHours(hours), 0, 0, advisory: null));
        }

        Assert.Equal(Stage.MainWork, standing.Stage);
    }

    [Fact]
    public void Stage_TurnsAwayBeforeUnsafeWind_StandsDownAndEndsTheEpisodeADayLater()
    {
        var standing = StageRules.Next("g", StageStanding.Calm(Start), Signs(Start, 0.30, 60, "a0"));
        standing = StageRules.Next("g", standing, Signs(Start + Duration.FromHours(6), 0.01, 60, "a1"));
        standing = StageRules.Next("g", standing, Signs(Start + Duration.FromHours(12), 0.01, 60, "a2"));
        Assert.Equal((Stage.NothingDue, StageCause.TurnedAway), (standing.Stage, standing.Reason.Cause));
        Assert.NotNull(standing.EpisodeId);
        standing = StageRules.Next("g", standing, Signs(Start + Duration.FromHours(37), 0.01, 60, "a3"));
        Assert.Null(standing.EpisodeId);
    }

    [Fact]
    public void Stage_ClosedAndLull_StaysClosedUntilOfficialEndInDaylight()
    {
        var standing = StageRules.Next("g", StageStanding.Calm(Start), Signs(Start, 0.9, 0.5));
        Assert.Equal(Stage.GardenClosed, standing.Stage);
        var lull = Signs(Start + Duration.FromHours(10), 0, 0);
        Assert.Equal(Stage.GardenClosed, StageRules.Next("g", standing, lull).Stage);
        Assert.Equal(Stage.GardenClosed, StageRules.Next("g", standing, lull with { WindOver = true, Daylight = false }).Stage);
        Assert.Equal(Stage.Recheck, StageRules.Next("g", standing, lull with { WindOver = true }).Stage);
    }

    [Fact]
    public void Stage_WindComesAgainAfterRecheck_BeginsAnotherEpisode()
    {
        var closed = StageRules.Next("g", StageStanding.Calm(Start), Signs(Start, 0.9, 0.5));
        var recheck = StageRules.Next("g", closed, Signs(Start + Duration.FromHours(20), 0, 0) with { WindOver = true });
        var again = StageRules.Next("g", recheck, Signs(Start + Duration.FromHours(40), 0.3, 90));
        Assert.Equal(Stage.SlowWork, again.Stage);
        Assert.NotEqual(closed.EpisodeId, again.EpisodeId);
    }
}
