using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Tests.Hazards;
using static StormClock.Core.Tests.KeptDesk;

namespace StormClock.Core.Tests;

/// <summary>The one door with point forecasts and notes: wind that is no cyclone, and rain.</summary>
public class StormDeskWeatherTests
{
    /// <summary>Every three hours from issue.</summary>
    private static PointForecast Local(Instant issued, params double[] gustsMps) => new(
        "the office", Alerts.Home.At, issued,
        [.. gustsMps.Select((gust, i) => new ForecastPeriod(issued + Duration.FromHours(3 * i), issued + Duration.FromHours(3 * i + 3), gust / 1.6, gust, null))]);

    /// <summary>A gale that is no cyclone: from the point forecast alone to work, closed, and look afterwards.</summary>
    [Fact]
    public void Decide_GaleByAPointForecastAlone_GoesThroughTheStages()
    {
        var desk = new KeptDesk(Book);
        var ledger = Alerts.Ledger(Local(Morning, [5, 5, 5, 6, 8, 10, 12, 16, 26, 32, 32, 26, 12, 8, 6, 5, 5, 5, 5, 5]));
        var first = desk.At(ledger, Morning);
        Assert.Equal((Stage.MainWork, true, "point forecast by the office"), (first.Standing.Stage.Stage, first.Standing.Stage.Reason.IsLocal, first.Standing.Stage.Reason.Source));
        Assert.NotEmpty(first.Plan!.Jobs);
        Assert.All(first.Plan.Jobs, job => Assert.True(job.End <= Morning + Duration.FromHours(24)));

        var newer = Morning + Duration.FromHours(23);
        ledger = ledger.With(Local(newer, [20, 28, 32, 32, 24, 12, 8, 6, 5, 5, 5, 5, 5, 5]), newer);
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, newer + Duration.FromHours(2)).Standing.Stage.Stage);

        Instant after = newer + Duration.FromHours(24), later = newer + Duration.FromHours(25);
        ledger = ledger.With(Local(after, [6, 5, 5, 5, 5, 5, 5, 5]), after);
        desk.At(ledger, after);
        ledger = ledger.With(Local(later, [6, 5, 5, 5, 5, 5, 5, 5]), later);
        Assert.Equal(Stage.Recheck, desk.At(ledger, later).Standing.Stage.Stage);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(15)]
    public void Decide_FreshBreezeByAPointForecast_IsNothing(double gustMps) =>
        Assert.Equal(Stage.NothingDue, new KeptDesk(Book).At(Alerts.Ledger(Local(Morning, 5, 5, gustMps, gustMps, 8, 5)), Morning).Standing.Stage.Stage);

    /// <summary>A breeze before the storm does not end the work for it, and the point forecast may bring the stop forward but not away.</summary>
    [Fact]
    public void Decide_CalmPointForecastUnderACyclone_TakesNothingAway()
    {
        var book = Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] };
        var now = SampleStorms.Ian16.IssuedAt;
        var alone = new KeptDesk(book).At(Alerts.Ledger(SampleStorms.Ian16), now);
        var calm = Local(now, [5, 5, 9, 5, 5, 5, 5, 5]) with { At = SampleStorms.FortMyers };
        var both = new KeptDesk(book).At(Alerts.Ledger(SampleStorms.Ian16, calm), now);
        Assert.Equal(alone.Standing.Stage.Stage, both.Standing.Stage.Stage);
        Assert.True(both.Plan!.WorkStops[WorkClass.Ground].Earliest <= alone.Plan!.WorkStops[WorkClass.Ground].Earliest);
        Assert.False(both.Standing.Stage.Reason.IsLocal);
    }

    private static GardenBook WithDrain
    {
        get
        {
            var book = Book;
            return book with { Items = [book.Items[0] with { Jobs = [.. book.Items[0].Jobs, Gardens.Job("grate", 20) with { Kind = JobKind.Drain }] }, .. book.Items.Skip(1)] };
        }
    }

    /// <summary>Rain alone is for work against water, and ends with the note (limits of science.md 4.3, C).</summary>
    [Theory]
    [InlineData(49, Stage.NothingDue)]
    [InlineData(50, Stage.LookOver)]
    [InlineData(75, Stage.SlowWork)]
    [InlineData(125, Stage.MainWork)]
    public void Decide_RainNoteAlone_IsForWorkAgainstWaterOnly(double mm, Stage stage)
    {
        var desk = new KeptDesk(WithDrain);
        var note = new RainNote("plot", "ada", Morning, Morning + Duration.FromHours(6), mm, 5);
        var decision = desk.At(Alerts.Ledger(note), Morning);
        Assert.Equal(stage, decision.Standing.Stage.Stage);
        if (stage == Stage.NothingDue) return;

        Assert.Equal((StageCause.Rain, (double?)mm), (decision.Standing.Stage.Reason.Cause, decision.Standing.Stage.Reason.RainMm));
        Assert.Equal(["grate"], decision.Plan!.Jobs.Select(job => job.Job.Id));
        Assert.True(decision.Plan.Jobs[0].End <= note.From);
        Assert.Equal(Stage.NothingDue, desk.At(Alerts.Ledger(note), Morning + Duration.FromHours(13)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_RainByAPointForecast_TakesTheCarefulValue()
    {
        // 100 mm in the day: the 80 % value is 100 · e^(0.8416 · 0.5) = 152 mm (science.md 6).
        var wet = Local(Morning, 5, 5, 5, 5, 5, 5, 5, 5);
        wet = wet with { Periods = [.. wet.Periods.Select(period => period with { RainMm = 12.5 })] };
        var decision = new KeptDesk(WithDrain).At(Alerts.Ledger(wet), Morning);
        Assert.Equal(Stage.MainWork, decision.Standing.Stage.Stage);
        Assert.Equal(152.3, decision.Standing.Stage.Reason.RainMm!.Value, 0.1);
    }
}
