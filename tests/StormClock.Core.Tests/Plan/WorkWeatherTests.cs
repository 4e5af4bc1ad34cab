using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>Rain, thunder and heat of a forecast in the plan (trade.md 1.5).</summary>
public class WorkWeatherTests
{
    private static readonly LocalDate Day = new(2027, 7, 20);

    private static Instant At(int hour, int minute = 0) => Gardens.Zone.AtStrictly(Day.At(new LocalTime(hour, minute))).ToInstant();

    private static WorkWeather Weather(params ForecastPeriod[] periods) =>
        WorkWeather.Of(Gardens.Home, [new("office", Gardens.Home.At, At(6), periods)], []);

    private static ForecastPeriod Hours(int from, int to) => new(At(from), At(to), 3, null, null);

    /// <summary>Common practice, no source: more likely than not; without a chance 0.01 in an hour.</summary>
    [Theory]
    [InlineData(0.51, null, true)]
    [InlineData(0.50, null, false)]
    [InlineData(0.30, 9.0, false)]
    [InlineData(null, 0.60, true)]
    [InlineData(null, 0.40, false)]
    [InlineData(null, null, false)]
    public void Wet_ByChanceOrAmount_ClosesLadderAndSawAlone(double? chance, double? mm, bool wet)
    {
        var weather = Weather(Hours(10, 12) with { RainChance = chance, RainMm = mm });
        foreach (var workClass in Enum.GetValues<WorkClass>())
        {
            Interval[] closed = wet && workClass is WorkClass.Ladder or WorkClass.Saw ? [new(At(10), At(12))] : [];
            Assert.Equal(closed, weather.Closed(workClass));
        }
    }

    [Fact]
    public void Rain_EnteredByHand_ClosesLadderAndSawForADay()
    {
        var weather = WorkWeather.Of(Gardens.Home, [], [new("garden", "ada", At(8), At(9), 80, null)]);
        Assert.Equal(new Interval(At(9), At(9) + Duration.FromHours(24)), Assert.Single(weather.Closed(WorkClass.Saw)));
        Assert.Empty(weather.Closed(WorkClass.Ground));
    }

    /// <summary>Trade check 22: half an hour after the last thunder.</summary>
    [Fact]
    public void Thunder_MoreLikelyThanNot_ClosesAllWorkUntilHalfAnHourAfter() =>
        Assert.All(Enum.GetValues<WorkClass>(), workClass => Assert.Equal(new Interval(At(14), At(15, 30)), Assert.Single(Weather(Hours(14, 15) with { Thunder = 0.6 }).Closed(workClass))));

    [Fact]
    public void Forecast_ForAPlaceFarAway_SaysNothing()
    {
        var weather = WorkWeather.Of(Gardens.Home, [new("office", new(31, -80), At(6), [Hours(10, 12) with { RainChance = 1, Thunder = 1, HeatIndexC = 45 }])], []);
        Assert.Empty(weather.Wet.Concat(weather.Thunder).Concat(weather.Hot));
    }

    [Fact]
    public void Plan_RainInTheMorning_PutsTheLadderAfterItAndGroundWorkIntoIt()
    {
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("ladder", 60, WorkClass.Ladder, value: 90), Gardens.Job("ground", 120, value: 5));
        var plan = Planned(book, Weather(Hours(8, 12) with { RainChance = 0.9 }));
        Assert.Equal(At(12), plan.Jobs.Single(job => job.Job.Id == "ladder").Start);
        Assert.Equal(At(8), plan.Jobs.Single(job => job.Job.Id == "ground").Start);
    }

    [Fact]
    public void Plan_ThunderAllDay_LeavesTheWorkOutAndSaysWhy()
    {
        var plan = Planned(Gardens.With([Gardens.Person("ada")], Gardens.Job("ground", 60)), Weather(Hours(6, 23) with { Thunder = 0.8 }));
        Assert.Equal("rain or thunder is forecast for every window that is long enough", Assert.Single(plan.LeftOut).Why);
    }

    /// <summary>Heat index 103 °F and more: 15 min of rest in each hour (trade.md 1.5, M). An hour's work from 12:00 in heat from then on ends at 13:15.</summary>
    [Theory]
    [InlineData(39.3, 13, 0)]
    [InlineData(39.5, 13, 15)]
    public void Plan_GreatHeat_RestsAQuarterOfEachHour(double heatC, int hour, int minute)
    {
        var book = Gardens.With([Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day, 12, 0, 20, 0))], Gardens.Job("ground", 60));
        var job = Assert.Single(Planned(book, Weather(Hours(12, 18) with { HeatIndexC = heatC })).Jobs);
        Assert.Equal((At(12), At(hour, minute)), (job.Start, job.End));
    }

    /// <summary>Six hours of heat hold four and a half of work: of five jobs of an hour four fit.</summary>
    [Fact]
    public void Plan_GreatHeatAllTheTime_HoldsLessWork()
    {
        var book = Gardens.With([Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day, 12, 0, 18, 0))], [.. Enumerable.Range(0, 5).Select(i => Gardens.Job($"j{i}", 60))]);
        Assert.Equal(4, Planned(book, Weather(Hours(12, 18) with { HeatIndexC = 41 })).Jobs.Count);
        Assert.Equal(5, Planned(book, WorkWeather.Fair).Jobs.Count);
    }

    private static GardenPlan Planned(GardenBook book, WorkWeather weather) =>
        Planner.Plan(new(book, new Dictionary<string, JobState>(), new Dictionary<(string, WorkClass), Core.Hazards.StopTimes>(), At(8), At(23, 30))
        {
            Weather = new Dictionary<string, WorkWeather> { ["home"] = weather },
        });
}
