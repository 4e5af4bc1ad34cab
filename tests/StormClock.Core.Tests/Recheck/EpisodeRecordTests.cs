using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Core.Worth;

namespace StormClock.Core.Tests.Recheck;

public class EpisodeRecordTests
{
    private static readonly Instant T0 = Instant.FromUtc(2027, 9, 20, 0, 0);

    [Fact]
    public void Next_StormThatComes_KeepsTheHighestStageTheClosingAndTheLastForecastBeforeIt()
    {
        var record = Next(null, Stage.LookOver, 0, 20)!;
        record = Next(record, Stage.MainWork, 24, 30)!;
        record = Next(record, Stage.GardenClosed, 48, 33)!;
        record = Next(record, Stage.GardenClosed, 50, 45)!;
        record = Next(record, Stage.Recheck, 72, 5)!;
        Assert.Equal((Stage.GardenClosed, T0, T0 + Duration.FromHours(48), null), (record.Highest, record.Began, record.Closed!.Value, record.Ended));
        Assert.Equal(30, record.Gust10MMps["s"]);

        var over = EpisodeRecord.Next(record, "g", StageStanding.Calm(T0), new Dictionary<string, PeakGusts>(), T0 + Duration.FromDays(30))!;
        Assert.Equal(T0 + Duration.FromDays(30), over.Ended);
        Assert.Same(over, EpisodeRecord.Next(over, "g", StageStanding.Calm(T0), new Dictionary<string, PeakGusts>(), T0 + Duration.FromDays(31)));
    }

    [Fact]
    public void Next_StoodDown_SaysWhenAndNeverClosed()
    {
        var record = Next(Next(null, Stage.MainWork, 0, 30), Stage.NothingDue, 30, 8, stoodDown: true)!;
        Assert.Equal((Stage.MainWork, null, T0 + Duration.FromHours(30)), (record.Highest, record.Closed, record.StoodDown!.Value));
    }

    /// <summary>The store is written only when something of it changed.</summary>
    [Fact]
    public void Next_NothingNew_IsTheSame()
    {
        var record = Next(null, Stage.MainWork, 0, 30)!;
        Assert.Same(record, Next(record, Stage.MainWork, 6, 30.3));
        Assert.NotSame(record, Next(record, Stage.MainWork, 6, 30.6));
        Assert.Null(EpisodeRecord.Next(null, "g", StageStanding.Calm(T0), new Dictionary<string, PeakGusts>(), T0));
    }

    [Fact]
    public void Next_AnotherEpisode_BeginsAnew() =>
        Assert.Equal("e2", EpisodeRecord.Next(Next(null, Stage.MainWork, 0, 30), "g", Standing(Stage.LookOver, T0, false) with { EpisodeId = "e2" }, new Dictionary<string, PeakGusts>(), T0)!.EpisodeId);

    private static EpisodeRecord? Next(EpisodeRecord? known, Stage stage, double hours, double gust, bool stoodDown = false)
    {
        var now = T0 + Duration.FromHours(hours);
        return EpisodeRecord.Next(known, "g", Standing(stage, now, stoodDown), new Dictionary<string, PeakGusts> { ["s"] = new([gust]) }, now);
    }

    private static StageStanding Standing(Stage stage, Instant since, bool stoodDown) =>
        new("e1", stage, new(StageCause.None, "NINETY advisory 3", since), since, 1, since, null, stoodDown ? since : null);
}
