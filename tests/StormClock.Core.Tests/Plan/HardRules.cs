using StormClock.Core.Garden;
using StormClock.Core.Plan;

namespace StormClock.Core.Tests.Plan;

/// <summary>What no plan may break, read off the book and not off the planner's tables.</summary>
internal static class HardRules
{
    public static void Hold(PlanRequest request, GardenPlan plan)
    {
        foreach (var job in plan.Jobs)
        {
            InTime(request, job);
            Able(request, job);
            foreach (var before in job.Job.After.Where(id => request.Book.Jobs.Any(other => other.Id == id && request.IsOpen(other))))
            {
                Assert.True(plan.Jobs.Single(other => other.Job.Id == before).End <= job.Start, "order");
            }

            if (job.Job.LastRound) NotDaysEarly(request, job);
        }

        OnePlaceAtATime(request.Book, plan);
        StoresHold(request.Book, plan);
        var open = request.Book.Jobs.Where(request.IsOpen).Select(job => job.Id).Order();
        Assert.Equal(open, plan.Jobs.Select(job => job.Job.Id).Concat(plan.LeftOut.Where(left => !left.Answered).Select(left => left.Job.Id)).Order());
        Assert.Equal(
            request.Book.Jobs.Where(job => request.Is(job, JobProgress.Cannot) && !request.IsOpen(job)).Select(job => job.Id).Order(),
            plan.LeftOut.Where(left => left.Answered).Select(left => left.Job.Id).Order());
        Assert.All(plan.Jobs.Where(job => request.WhyNot(job.Job) == CannotWhy.NeedsPerson), job => Assert.True(job.People.Count > request.Book.Jobs.First(book => book.Id == job.Job.Id).People, "one more"));
    }

    private static void InTime(PlanRequest request, PlannedJob job)
    {
        var book = request.Book;
        Assert.True(job.Start >= request.Now && job.End <= request.StopOf(job.Job), "within now and the stop of its class at its site");
        Assert.True(job.StartBy >= job.Start, "start by is not before the planned start");
        // A planned time in great heat holds rests that a later one need not have; of a job that was begun only the rest is left.
        var least = Duration.FromMinutes(Remaining.Minutes(request, job.Job));
        Assert.True(job.StartBy + least <= request.StopOf(job.Job), "started by then, it still ends before the stop");
        Assert.InRange(job.ChanceDone, 0, 1);
        var date = job.Start.InZone(book.Zone).Date;
        var light = WorkLight.On(date, SiteOf(book, job.Job).At, book.Zone, job.Job.Class)!.Value;
        Assert.True(light.Start <= job.Start && job.End <= light.End, "in light");
        foreach (var closed in request.WeatherAt(SiteOf(book, job.Job)).Closed(job.Job.Class)) Assert.True(job.End <= closed.Start || job.Start >= closed.End, "no rain or thunder");
        foreach (var person in job.People.Select(id => book.People.First(person => person.Id == id)))
        {
            Assert.DoesNotContain(date, person.DaysOff);
            if (person.Hours.Count == 0) continue;
            Assert.Contains(person.Hours, h => h.HoldsOn(date) && h.From <= job.Start.InZone(book.Zone).TimeOfDay && job.End.InZone(book.Zone).TimeOfDay <= h.To);
        }
    }

    private static void Able(PlanRequest request, PlannedJob job)
    {
        var people = job.People.Distinct().Select(id => request.Book.People.First(person => person.Id == id)).ToList();
        Assert.Equal(job.People.Count, people.Count);
        Assert.True(people.Count >= job.Job.People, "never fewer people than it needs");
        Assert.DoesNotContain(people, person => person.Role == PersonRole.Keeper);
        if (job.Job.Class == WorkClass.Ladder) Assert.DoesNotContain(people, person => person.NoLadder || (people.Count == 1 && !person.LadderAlone));
        if (job.Job.Kind is not (JobKind.Move or JobKind.Raise or JobKind.TakeDown)) return;
        var lift = people.Sum(person => person.LiftKg) * (people.Count == 1 ? 1 : 2.0 / 3);
        Assert.True(request.Book.ItemOf(job.Job).MassKg <= lift + 1e-6, "lifting");
    }

    /// <summary>Not before the work day before the last one in which any of it can be done, unless the stop is within twelve hours.</summary>
    private static void NotDaysEarly(PlanRequest request, PlannedJob job)
    {
        var stop = request.StopOf(job.Job);
        var days = request.Book.People
            .SelectMany(person => WorkWindows.For(request.Book, person, SiteOf(request.Book, job.Job), job.Job.Class, request.Now, stop))
            .SelectMany(window => Without(window, request.WeatherAt(SiteOf(request.Book, job.Job)).Closed(job.Job.Class).ToList()))
            .Where(window => window.Duration >= Duration.FromMinutes(job.Job.Minutes))
            .Select(window => window.Start.InZone(request.Book.Zone).Date)
            .Where(date => date <= (stop - Duration.FromHours(12)).InZone(request.Book.Zone).Date)
            .Distinct().OrderDescending().ToList();
        if (days.Count > 2) Assert.True(job.Start.InZone(request.Book.Zone).Date >= days[2], "no last round days early");
    }

    private static IEnumerable<Interval> Without(Interval window, IReadOnlyList<Interval> closed)
    {
        var cut = closed.Where(hours => hours.Start < window.End && hours.End > window.Start).Take(1).ToList();
        if (cut.Count == 0) return [window];
        return new[] { (From: window.Start, To: cut[0].Start), (From: cut[0].End, To: window.End) }
            .Where(part => part.From < part.To)
            .SelectMany(part => Without(new(part.From, part.To), closed));
    }

    private static void OnePlaceAtATime(GardenBook book, GardenPlan plan)
    {
        foreach (var person in book.People)
        {
            var own = plan.Jobs.Where(job => job.People.Contains(person.Id)).OrderBy(job => job.Start).ToList();
            for (var i = 1; i < own.Count; i++)
            {
                var (from, to) = (SiteOf(book, own[i - 1].Job), SiteOf(book, own[i].Job));
                var walk = from.Id == to.Id ? Duration.Zero : Duration.FromMinutes(from.TravelMinutes.GetValueOrDefault(to.Id));
                Assert.True(own[i].Start >= own[i - 1].End + walk, "one place at a time");
            }
        }
    }

    private static void StoresHold(GardenBook book, GardenPlan plan)
    {
        foreach (var store in book.Stores)
        {
            var moved = plan.Jobs.Select(job => job.Job).Where(job => job.StoreId == store.Id).ToList();
            Assert.True(moved.Sum(job => job.StoreFloorM2) <= (store.FloorM2 ?? double.MaxValue) + 1e-6, "floor");
            Assert.True(moved.Sum(job => job.StoreVolumeM3) <= (store.VolumeM3 ?? double.MaxValue) + 1e-6, "volume");
        }
    }

    private static Site SiteOf(GardenBook book, Job job) => book.SiteOf(book.AreaOf(book.ItemOf(job)));
}
