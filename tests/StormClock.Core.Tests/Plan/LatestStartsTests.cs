using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

public class LatestStartsTests
{
    private static readonly LocalDate Day1 = new(2027, 6, 21);
    private static readonly LocalDate Day2 = new(2027, 6, 22);

    private static Instant At(LocalDate date, int hour, int minute = 0) =>
        Gardens.Zone.AtStrictly(date.At(new LocalTime(hour, minute))).ToInstant();

    /// <summary>
    /// Vector P3 (science.md 8.6): windows day 1 14:00-19:00 and day 2 06:30-19:00, stop at day 2 12:00. Four hours of work start by day 2
    /// 08:00, eight by day 1 16:30. Work is half-hour jobs, so that it may be split; the sun of June does not limit the windows.
    /// </summary>
    [Theory]
    [InlineData(8, 2, 8, 0)]
    [InlineData(16, 1, 16, 30)]
    public void Back_VectorP3_IsMet(int jobs, int day, int hour, int minute)
    {
        var (problem, line) = HalfHours(jobs);
        var latest = new int[jobs];
        LatestStarts.Back(problem.Model, line, [.. problem.Model.Jobs.Select(job => job.Length)], problem.Model.Stop, latest);
        Assert.Equal(At(day == 1 ? Day1 : Day2, hour, minute), problem.Grid.At(latest.Min()));
    }

    /// <summary>
    /// One job of two hours before a stop at 12:00 that is known: in nine cases of ten it takes no longer than
    /// 120 min · exp(1.2816 · 0.3) = 176 min, so it must begin by 09:04 (worked out by hand); 200 draws are good to a few minutes.
    /// </summary>
    [Fact]
    public void Of_OneJobBeforeAKnownStop_LeavesTimeForASlowDay()
    {
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("j", 120));
        var problem = PlanProblem.Of(Request(book, At(Day2, 7), new StopTimes(At(Day2, 12))), [.. book.Jobs]);
        Assert.InRange(problem.Grid.At(LatestStarts.Of(problem.Model, OrderSearch.Best(problem.Model))[0]), At(Day2, 8, 54), At(Day2, 9, 14));
    }

    /// <summary>
    /// What the words promise: begun by its last start, a lone job ends in time in nine cases of ten. Held against draws of its own, over stops
    /// near and far, narrow and wide.
    /// </summary>
    [Theory]
    [InlineData(30, 6, 0.2)]
    [InlineData(120, 6, 1)]
    [InlineData(240, 9, 0.5)]
    [InlineData(60, 9, 2)]
    public void Of_LoneJobBegunByThen_EndsInTimeInNineCasesOfTen(int minutes, double likelyHours, double spreadHours)
    {
        var random = new Random(minutes);
        var now = At(Day2, 7);
        float[] arrivals = [.. Enumerable.Range(0, 5000).Select(_ => (float)(likelyHours + (spreadHours * Normal(random))))];
        var stop = new StopTimes(MemberTimes.Of(arrivals, [.. arrivals.Select(hours => hours + 12)], 0), now, now, null);
        var book = Gardens.With([Gardens.Person("ada")], Gardens.Job("j", minutes));
        var problem = PlanProblem.Of(Request(book, now, stop), [.. book.Jobs]);
        var start = problem.Grid.At(LatestStarts.Of(problem.Model, OrderSearch.Best(problem.Model))[0]);
        var inTime = arrivals.Average(hours => start + Duration.FromMinutes(minutes * Math.Exp(0.3 * Normal(random))) <= now + Duration.FromHours(hours) ? 1.0 : 0);
        Assert.InRange(inTime, 0.87, 1);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static (PlanProblem Problem, Line Line) HalfHours(int jobs)
    {
        var gardener = Gardens.Person("ada", PersonRole.Gardener, Gardens.Hours(Day1, 14, 0, 19, 0), Gardens.Hours(Day2, 6, 30, 19, 0));
        var book = Gardens.With([gardener], [.. Enumerable.Range(0, jobs).Select(i => Gardens.Job($"j{i:00}", 30))]);
        var problem = PlanProblem.Of(Request(book, At(Day1, 13), new StopTimes(At(Day2, 12))), [.. book.Jobs]);
        return (problem, OrderSearch.Best(problem.Model));
    }

    private static PlanRequest Request(GardenBook book, Instant now, StopTimes stop) =>
        new(book, new Dictionary<string, JobState>(), book.Sites.ToDictionary(site => (site.Id, WorkClass.Ground), _ => stop), now, now + Duration.FromDays(6));
}
