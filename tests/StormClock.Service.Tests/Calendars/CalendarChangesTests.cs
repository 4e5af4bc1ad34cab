using CsCheck;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Calendars;

namespace StormClock.Service.Tests.Calendars;

public class CalendarChangesTests
{
    private static readonly string Job = PlannedCalendars.Plan.Jobs[0].Job.Id;

    [Fact]
    public void Next_FirstPlan_HasOneEventForEachJobOfEachPerson()
    {
        var wanted = PlannedCalendars.Plan.Jobs.Where(job => job.End <= PlannedCalendars.Plan.WorkStops[WorkClass.Ground].Earliest)
            .SelectMany(job => job.People.Select(person => (person, job.Job.Id))).Order();
        Assert.Equal(wanted, PlannedCalendars.First.Events.Select(told => (told.PersonId, told.JobId)).Order());
        Assert.All(PlannedCalendars.First.Events, told => Assert.Equal((0, false, false), (told.Sequence, told.TakenBack, told.Told)));
        Assert.Equal(PlannedCalendars.First.Events.Count, PlannedCalendars.First.Events.Select(told => told.Uid).Distinct().Count());
    }

    [Fact]
    public void Next_SameDecision_ChangesNothing() =>
        Assert.Same(PlannedCalendars.First, PlannedCalendars.Next(PlannedCalendars.First, PlannedCalendars.Decided(PlannedCalendars.Plan), Duration.FromHours(3)));

    /// <summary>Work that can begin now slides with the clock; only a quarter of an hour of it, or anything sooner, is a change.</summary>
    [Theory]
    [InlineData(14, false)]
    [InlineData(15, true)]
    [InlineData(-1, true)]
    public void Next_TimesMove_SequenceRisesByOneAndTheNameStays(int minutes, bool changes)
    {
        var next = PlannedCalendars.Next(PlannedCalendars.First, PlannedCalendars.Decided(PlannedCalendars.Moved(Job, Duration.FromMinutes(minutes))), Duration.FromHours(1));
        var (before, after) = (Events(PlannedCalendars.First), Events(next));
        Assert.Equal(before.Select(told => told.Uid), after.Select(told => told.Uid));
        Assert.All(before.Zip(after), pair => Assert.Equal((changes ? 1 : 0, changes ? Duration.FromMinutes(minutes) : Duration.Zero), (pair.Second.Sequence, pair.Second.Start - pair.First.Start)));
        Assert.Equal(PlannedCalendars.First.Events.Where(told => told.JobId != Job), next.Events.Where(told => told.JobId != Job));
    }

    [Fact]
    public void Next_JobDoneAndThenPlannedAgain_IsTakenBackOnceAndStandsAgain()
    {
        var gone = PlannedCalendars.Next(PlannedCalendars.First, PlannedCalendars.Decided(PlannedCalendars.Without(Job)), Duration.FromHours(1));
        Assert.All(Events(gone), told => Assert.Equal((true, 1, PlannedCalendars.Now + Duration.FromHours(1)), (told.TakenBack, told.Sequence, told.ChangedAt)));
        Assert.Same(gone, PlannedCalendars.Next(gone, PlannedCalendars.Decided(PlannedCalendars.Without(Job)), Duration.FromHours(2)));

        var again = PlannedCalendars.Next(gone, PlannedCalendars.Decided(PlannedCalendars.Plan), Duration.FromHours(3));
        Assert.All(Events(again), told => Assert.Equal((false, 2), (told.TakenBack, told.Sequence)));
    }

    /// <summary>Rules 7.1 and 7.2: nothing stands that nobody may be told to do.</summary>
    [Theory]
    [InlineData(Stage.GardenClosed, OfficialOrder.None, null)]
    [InlineData(Stage.MainWork, OfficialOrder.Evacuate, null)]
    [InlineData(Stage.MainWork, OfficialOrder.Shelter, null)]
    [InlineData(Stage.MainWork, OfficialOrder.None, 0.0)]
    public void Next_NobodyMayWork_TakesEverythingBack(Stage stage, OfficialOrder order, double? leaveInHours)
    {
        var leaveBy = leaveInHours is { } hours ? PlannedCalendars.Now + Duration.FromHours(hours) : (Instant?)null;
        var next = PlannedCalendars.Next(PlannedCalendars.First, PlannedCalendars.Decided(PlannedCalendars.Plan, stage, order, leaveBy));
        Assert.All(next.Events, told => Assert.True(told.TakenBack));
    }

    [Fact]
    public void Next_LeaveBy_KeepsEveryEventAndLastStartBeforeIt() => Gen.Double[0.1, 60].Sample(hours =>
    {
        var leaveBy = PlannedCalendars.Now + Duration.FromHours(hours);
        var standing = PlannedCalendars.Next(PlannedCalendars.First, PlannedCalendars.Decided(PlannedCalendars.Plan, leaveBy: leaveBy)).Events.Where(told => !told.TakenBack);
        Assert.All(standing, told => Assert.True(told.End <= leaveBy && told.StartBy + (told.End - told.Start) <= leaveBy));
    });

    [Fact]
    public void Next_AnotherEpisode_BeginsAnewUnderOtherNames()
    {
        var next = PlannedCalendars.Next(PlannedCalendars.First, PlannedCalendars.Decided(PlannedCalendars.Plan, episode: "e2"));
        Assert.Empty(next.Events.Select(told => told.Uid).Intersect(PlannedCalendars.First.Events.Select(told => told.Uid)));
        Assert.Equal(GardenCalendar.Empty, PlannedCalendars.Next(next, PlannedCalendars.Decided(null, Stage.NothingDue, episode: null)));
    }

    /// <summary>Whatever comes after whatever: no sequence ever falls, and it rises exactly with the event.</summary>
    [Fact]
    public void Next_AnyCourse_SequenceNeverFallsAndRisesWithEveryChange() => Gen.Int[0, 5].Array[1, 12].Sample(course =>
    {
        var calendar = PlannedCalendars.First;
        foreach (var (at, step) in course.Index())
        {
            var plan = step == 0 ? PlannedCalendars.Without(Job) : PlannedCalendars.Moved(Job, Duration.FromMinutes((step - 1) * 10));
            var next = PlannedCalendars.Next(calendar, PlannedCalendars.Decided(plan), Duration.FromMinutes(at));
            Assert.All(Events(calendar).Zip(Events(next)), pair =>
                Assert.Equal(pair.First == pair.Second ? 0 : 1, pair.Second.Sequence - pair.First.Sequence));
            calendar = next;
        }
    });

    [Fact]
    public void Json_AnyCalendar_ComesBackEqual()
    {
        var back = GardenCalendar.FromJson(PlannedCalendars.First.ToJson());
        Assert.Equal(PlannedCalendars.First.EpisodeId, back.EpisodeId);
        Assert.Equal(PlannedCalendars.First.Events, back.Events);
    }

    private static List<CalendarEvent> Events(GardenCalendar calendar) => [.. calendar.Events.Where(told => told.JobId == Job).OrderBy(told => told.Uid, StringComparer.Ordinal)];
}
