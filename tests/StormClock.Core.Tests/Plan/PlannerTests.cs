using CsCheck;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

public class PlannerTests
{
    private static readonly LocalDate Day1 = new(2027, 9, 21);
    private static readonly LocalDate Day2 = new(2027, 9, 22);

    private static Instant At(LocalDate date, int hour, int minute = 0) =>
        Gardens.Zone.AtStrictly(date.At(new LocalTime(hour, minute))).ToInstant();

    private static PlanRequest Request(GardenBook book, Instant now, Instant? stop, params (WorkClass Class, Instant Stop)[] others)
    {
        var stops = new Dictionary<(string, WorkClass), StopTimes>();
        foreach (var site in book.Sites)
        {
            foreach (var workClass in Enum.GetValues<WorkClass>())
            {
                var own = others.Where(other => other.Class == workClass).Select(other => (Instant?)other.Stop).FirstOrDefault() ?? stop;
                if (own is { } at) stops[(site.Id, workClass)] = new(at);
            }
        }

        return new(book, new Dictionary<string, JobState>(), stops, now, now + Duration.FromDays(6));
    }

    [Fact]
    public void Plan_TwelveHoursOfWorkInTenAndAHalf_LeavesWorkOutWithTheReason()
    {
        var plan = Planner.Plan(Request(BackCalendar(24), At(Day1, 13), At(Day2, 12)));
        Assert.NotEmpty(plan.LeftOut);
        Assert.Equal(24, plan.LeftOut.Count + plan.Jobs.Count);
        Assert.All(plan.LeftOut, left => Assert.Equal(LeftCause.NoTime, left.Why.Cause));
    }

    [Fact]
    public void Plan_NotAllFits_LeavesOutTheLeastWorthByTheMinute()
    {
        var gardener = Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day1, 10, 0, 11, 0));
        var book = Gardens.With([gardener], Gardens.Job("cheap", 30, value: 1), Gardens.Job("dear", 30, value: 9), Gardens.Job("fair", 30, value: 5));
        var plan = Planner.Plan(Request(book, At(Day1, 9), At(Day1, 15)));
        Assert.Equal(["cheap"], plan.LeftOut.Select(left => left.Job.Id));
        Assert.Equal(["dear", "fair"], plan.Jobs.Select(job => job.Job.Id));
    }

    [Fact]
    public void Plan_SheetsStopBeforeGroundWork_ComeFirstThoughWorthLess()
    {
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("ground", 60, value: 90), Gardens.Job("sheet", 60, WorkClass.Sheet, value: 5));
        var plan = Planner.Plan(Request(book, At(Day1, 9), At(Day1, 16), (WorkClass.Sheet, At(Day1, 10, 30))));
        Assert.Equal(["sheet", "ground"], plan.Jobs.Select(job => job.Job.Id));
    }

    [Fact]
    public void Plan_TwoPersonJob_TakesBothAtOnceWithinTheHelpersHours()
    {
        var helper = Gardens.Person("bo", PersonRole.Helper, Gardens.Hours(Day1, 13, 0, 15, 0));
        var book = Gardens.With([Gardens.Person("ada"), helper], Gardens.Job("heavy", 60, people: 2), Gardens.Job("light", 30));
        var plan = Planner.Plan(Request(book, At(Day1, 9), At(Day1, 17)));
        var heavy = plan.Jobs.Single(job => job.Job.Id == "heavy");
        Assert.Equal(["ada", "bo"], heavy.People);
        Assert.Equal(At(Day1, 13), heavy.Start);
        Assert.InRange(heavy.StartBy, At(Day1, 13), At(Day1, 14));
        Assert.Equal(At(Day1, 9), plan.Jobs.Single(job => job.Job.Id == "light").Start);
    }

    [Fact]
    public void Plan_TwoPersonJobForOnePerson_IsLeftOutNotDoneAlone()
    {
        var plan = Planner.Plan(Request(Gardens.With([Gardens.Person("ada")], Gardens.Job("heavy", 60, people: 2)), At(Day1, 9), At(Day1, 17)));
        Assert.Equal(new LeftReason(LeftCause.TooFewPeople) { People = 2 }, Assert.Single(plan.LeftOut).Why);
    }

    [Fact]
    public void Plan_TwoSites_KeepsTheWalkFree()
    {
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("here", 60, value: 20), Gardens.Job("there", 60) with { ItemId = "far-item" });
        var plan = Planner.Plan(Request(book, At(Day1, 9), At(Day1, 17)));
        Assert.Equal(At(Day1, 10), plan.Jobs[0].End);
        Assert.True(plan.Jobs[1].Start - plan.Jobs[0].End >= Duration.FromMinutes(20));
    }

    [Fact]
    public void Plan_DoneJob_IsNotPlannedAgain()
    {
        var request = Request(Gardens.With([Gardens.Person("ada")], Gardens.Job("a", 60), Gardens.Job("b", 60)), At(Day1, 9), At(Day1, 17)) with
        {
            States = new Dictionary<string, JobState> { ["a"] = new("a", JobProgress.Done, At(Day1, 8), "ada") },
        };
        Assert.Equal(["b"], Planner.Plan(request).Jobs.Select(job => job.Job.Id));
    }

    /// <summary>What would be done in its place is work of the same class, which has stopped too.</summary>
    [Theory]
    [InlineData(11, null)]
    [InlineData(13, "lay it down")]
    public void Plan_LeftOut_NamesAFallbackOnlyWhileItsWorkGoesOn(int stopHour, string? fallback)
    {
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("tie", 90) with { Fallback = "lay it down" });
        Assert.Equal(fallback, Assert.Single(Planner.Plan(Request(book, At(Day1, 12), At(Day1, stopHour))).LeftOut).Fallback);
    }

    [Fact]
    public void Plan_StopAlreadyPassed_LeavesEverythingOut()
    {
        var plan = Planner.Plan(Request(Gardens.With([Gardens.Person("ada")], Gardens.Job("tie", 30)), At(Day1, 12), At(Day1, 11)));
        Assert.Equal(LeftCause.Stopped, Assert.Single(plan.LeftOut).Why.Cause);
    }

    /// <summary>Dark, own hours, stop, one place at a time, teams, order: never broken, whatever the garden.</summary>
    [Fact]
    public void Plan_AnyGarden_KeepsEveryHardRule()
    {
        var gen =
            from count in Gen.Int[1, 14]
            from minutes in Gen.Int[5, 180].Array[count]
            from classes in Gen.Int[0, 4].Array[count]
            from people in Gen.Int[1, 2].Array[count]
            from values in Gen.Int[0, 100].Array[count]
            from after in Gen.Int[-6, 13].Array[count]
            from far in Gen.Bool.Array[count]
            from last in Gen.Int[0, 5].Array[count]
            from nowHour in Gen.Int[0, 23]
            from stopHours in Gen.Int[-3, 70]
            from helper in Gen.Bool
            select (count, minutes, classes, people, values, after, far, last, nowHour, stopHours, helper);
        Check.Sample(gen, g =>
        {
            var jobs = Enumerable.Range(0, g.count).Select(i => Gardens.Job($"j{i:00}", g.minutes[i], (WorkClass)g.classes[i], g.people[i], g.values[i]) with
            {
                ItemId = g.far[i] ? "far-item" : "item",
                After = g.after[i] >= 0 && g.after[i] < i ? [$"j{g.after[i]:00}"] : [],
                LastRound = g.last[i] == 0,
            }).ToArray();
            List<Person> crew = [Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day1, 8, 0, 20, 0), Gardens.Hours(Day2, 5, 0, 12, 0))];
            if (g.helper) crew.Add(Gardens.Person("bo", PersonRole.Helper, Gardens.Hours(Day1, 13, 0, 18, 0), Gardens.Hours(Day2, 9, 0, 22, 0)));
            var book = Gardens.With(crew, jobs);
            var now = At(Day1, g.nowHour);
            var stop = now + Duration.FromHours(g.stopHours);
            var plan = Planner.Plan(Request(book, now, stop, (WorkClass.Sheet, now + Duration.FromHours(g.stopHours / 2.0))));
            AssertHardRules(book, plan, now, stop, now + Duration.FromHours(g.stopHours / 2.0));
            Assert.Equal(g.count, plan.Jobs.Count + plan.LeftOut.Count);
        }, iter: 300);
    }

    private static void AssertHardRules(GardenBook book, GardenPlan plan, Instant now, Instant stop, Instant sheetStop)
    {
        foreach (var job in plan.Jobs)
        {
            Assert.True(job.Start >= now && job.End <= (job.Job.Class == WorkClass.Sheet ? sheetStop : stop), "within now and stop");
            Assert.True(job.StartBy >= job.Start, "start by is not before the planned start");
            Assert.Equal(job.Job.People, job.People.Distinct().Count());
            var site = book.SiteOf(book.AreaOf(book.ItemOf(job.Job)));
            var date = job.Start.InZone(book.Zone).Date;
            var light = WorkLight.On(date, site.At, book.Zone, job.Job.Class)!.Value;
            Assert.True(light.Start <= job.Start && job.End <= light.End, "in light");
            foreach (var id in job.People)
            {
                var hours = book.People.First(person => person.Id == id).Hours.Where(h => h.HoldsOn(date));
                Assert.Contains(hours, h => h.From <= job.Start.InZone(book.Zone).TimeOfDay && job.End.InZone(book.Zone).TimeOfDay <= h.To);
            }

            foreach (var before in job.Job.After) Assert.True(plan.Jobs.Single(other => other.Job.Id == before).End <= job.Start, "order");
        }

        foreach (var person in book.People)
        {
            var own = plan.Jobs.Where(job => job.People.Contains(person.Id)).OrderBy(job => job.Start).ToList();
            for (var i = 1; i < own.Count; i++)
            {
                var walk = book.ItemOf(own[i].Job).AreaId == book.ItemOf(own[i - 1].Job).AreaId ? Duration.Zero : Duration.FromMinutes(20);
                Assert.True(own[i].Start >= own[i - 1].End + walk, "one place at a time");
            }
        }
    }

    private static GardenBook BackCalendar(int halfHourJobs) =>
        Gardens.With(
            [Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day1, 14, 0, 19, 0), Gardens.Hours(Day2, 6, 30, 19, 0))],
            [.. Enumerable.Range(0, halfHourJobs).Select(i => Gardens.Job($"j{i:00}", 30))]);
}
