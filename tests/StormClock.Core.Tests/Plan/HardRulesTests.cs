using CsCheck;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Plan;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Plan;

/// <summary>Any garden, any storm, any people, any past: the hard rules hold.</summary>
public class HardRulesTests
{
    [Fact]
    public void Plan_RandomGardensAndStorms_KeepsEveryHardRule() => Sample(300);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Plan_FiveThousandGardensAndStorms_KeepsEveryHardRule() => Sample(5_000);

    private static void Sample(int gardens) =>
        Check.Sample(Requests, request => HardRules.Hold(request, Planner.Plan(request)), iter: gardens);

    private static Gen<PlanRequest> Requests =>
        from number in Gen.Int[0, 1_000_000]
        from jobs in Gen.Int[0, 16]
        from people in Gen.Int[0, 4]
        from hours in Gen.Double[1, 60]
        select Twisted(number, RandomGardens.Request(number, jobs, people, hours));

    private static WorkWeather Weather(Random random, Instant now)
    {
        return new(Hours(), Hours(), Hours());

        IReadOnlyList<Interval> Hours() => [.. Enumerable.Range(0, random.Next(4)).Select(_ => now + Duration.FromMinutes(random.Next(-60, 3000))).Select(from => new Interval(from, from + Duration.FromMinutes(random.Next(1, 300))))];
    }

    /// <summary>Adds what the plain instances do not have: days off, a keeper, people without ladders, leave-by, things said of jobs, rain, thunder and heat, a told plan.</summary>
    private static PlanRequest Twisted(int number, PlanRequest plain)
    {
        var random = new Random(number);
        var date = plain.Now.InZone(Gardens.Zone).Date;
        Person[] people = [.. plain.Book.People.Select(person => person with
        {
            Role = random.Next(8) == 0 ? PersonRole.Keeper : person.Role,
            DaysOff = random.Next(4) == 0 ? [date.PlusDays(random.Next(3))] : [],
            Hours = random.Next(4) == 0 ? [] : person.Hours,
            LadderAlone = random.Next(2) == 0,
        } with { NoLadder = random.Next(4) == 0 })];
        Instant? leaveBy = random.Next(3) == 0 ? plain.Now + Duration.FromMinutes(random.Next(-60, 3000)) : null;
        var states = plain.Book.Jobs.Where(_ => random.Next(5) == 0)
            .ToDictionary(job => job.Id, job => new JobState(job.Id, (JobProgress)random.Next(5), plain.Now - Duration.FromMinutes(random.Next(200)), "p0", random.Next(4) is > 0 and var why ? (CannotWhy)(why - 1) : null));
        var request = plain with
        {
            Book = plain.Book with { People = people },
            States = states,
            Stops = leaveBy is { } leave ? plain.Stops.ToDictionary(stop => stop.Key, stop => random.Next(2) == 0 ? stop.Value.HeldTo(leave) : new StopTimes(leave)) : plain.Stops,
            Weather = random.Next(2) == 0 ? plain.Weather : new Dictionary<string, WorkWeather> { ["home"] = Weather(random, plain.Now), ["far"] = Weather(random, plain.Now) },
        };
        if (random.Next(2) == 0) return request;
        var told = Planner.Plan(plain with { Now = plain.Now - Duration.FromHours(random.Next(12)) });
        return request with { Before = new([.. told.Jobs.Select(job => new ToldJob(job.Job.Id, job.Start, job.People))], told.WorkStops.Where(stop => stop.Value.Earliest is not null).ToDictionary(stop => stop.Key, stop => stop.Value.Earliest!.Value)) };
    }
}
