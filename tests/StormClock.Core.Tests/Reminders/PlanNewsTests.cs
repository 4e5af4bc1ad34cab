using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Reminders;

/// <summary>science.md 8.4: what is worth a message of its own, and what is noise.</summary>
public class PlanNewsTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 9, 20, 12, 0);
    private static readonly Announced Told = PlanNews.Told(Announced.Nothing, Plan(stopHours: 48, startByHours: 30));

    [Fact]
    public void News_SamePlan_IsNone() => Assert.Same(Told, PlanNews.Next(Told, Plan(48, 30)));

    /// <summary>Half a day later the same work looks different; nobody needs to hear that.</summary>
    [Fact]
    public void News_StartMovedThoughTheStopDidNot_IsNone() => Assert.Same(Told, PlanNews.Next(Told, Plan(48, 20)));

    [Fact]
    public void News_StopOneHourEarlier_IsNone() => Assert.Same(Told, PlanNews.Next(Told, Plan(47, 30)));

    [Fact]
    public void News_StopTwoHoursEarlier_IsTold()
    {
        var next = PlanNews.Next(Told, Plan(46, 30));
        Assert.Equal((1, Now), (next.Changes, next.ChangedAt));
        var news = Assert.Single(next.News);
        Assert.Equal((PlanNewsKind.StopsSooner, 0), (news.Kind, news.JobIds.Count));
    }

    [Fact]
    public void News_StartEarlierBecauseOfTheStop_IsTold() =>
        Assert.Equal([Plan(46.5, 28).Jobs[0].Job.Id], PlanNews.Next(Told, Plan(46.5, 28)).News.Single(news => news.Kind == PlanNewsKind.StartSooner).JobIds);

    [Fact]
    public void News_JobMissedItsStart_IsTold()
    {
        var later = Now + Duration.FromHours(31);
        var next = PlanNews.Next(Told, Plan(48, null, later));
        var news = Assert.Single(next.News);
        Assert.Equal(PlanNewsKind.NoLongerFit, news.Kind);
        Assert.Equal(Plan(48, null, later).LeftOut.Select(left => left.Job.Id), news.JobIds);
    }

    /// <summary>Whoever has nothing left is named, so that the message reaches them too.</summary>
    [Fact]
    public void News_AllWorkOfAPersonFellOut_NamesThem()
    {
        var later = Now + Duration.FromHours(31);
        Assert.Equal(Told.Jobs.SelectMany(job => job.People).Distinct().Order(), PlanNews.Next(Told, Plan(48, null, later)).Idle);
        Assert.Empty(PlanNews.Next(Told, Plan(46, 30)).Idle);
    }

    [Fact]
    public void News_JobLeftOutThoughNothingMoved_IsNone() => Assert.Same(Told, PlanNews.Next(Told, Plan(48, null)));

    [Fact]
    public void News_TwiceWithinTwoHours_IsToldOnce()
    {
        var first = PlanNews.Next(Told, Plan(46, 30));
        Assert.Same(first, PlanNews.Next(first, Plan(40, 30, Now + Duration.FromHours(1))));
        Assert.Equal(2, PlanNews.Next(first, Plan(40, 30, Now + Duration.FromHours(2))).Changes);
    }

    /// <param name="startByHours">Null: the job does not fit.</param>
    private static GardenPlan Plan(double stopHours, double? startByHours, Instant? made = null)
    {
        var stop = new WorkStop(Now + Duration.FromHours(stopHours), Now + Duration.FromHours(stopHours + 8));
        var job = Gardens.Job("tie", 30);
        return new(
            made ?? Now,
            Enum.GetValues<WorkClass>().ToDictionary(work => work, _ => stop),
            startByHours is { } hours ? [new(job, ["ada"], Now, Now + Duration.FromMinutes(30), Now + Duration.FromHours(hours), 1)] : [],
            startByHours is null ? [new(job, LeftCause.NoTime, null)] : [],
            [],
            []);
    }
}
