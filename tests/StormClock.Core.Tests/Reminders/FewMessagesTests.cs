using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Reminders;

/// <summary>Random storms, people and answers: few messages, none twice, none of no use (product.md 6 and 8).</summary>
public class FewMessagesTests
{
    private static readonly ReminderReason[] Apart = [ReminderReason.Leave, ReminderReason.OrderLifted, ReminderReason.Late, ReminderReason.NotIn];

    [Fact]
    public void Decide_RandomStorms_KeepsMessagesFew() => Gen.Int[0, 1_000_000].Sample(Play, iter: 25, threads: 1);

    private static void Play(int number)
    {
        var random = new Random(number);
        Person[] people =
        [
            Gardens.Person("ada") with { SecondEmail = random.Next(2) == 0 ? "ada@elsewhere.invalid" : null },
            Gardens.Person("bo", PersonRole.Helper) with { SecondEmail = random.Next(2) == 0 ? "bo@elsewhere.invalid" : null },
            .. random.Next(2) == 0 ? [Gardens.Person("cy", PersonRole.Helper) with { Email = null }] : Array.Empty<Person>(),
            .. random.Next(2) == 0 ? [Gardens.Person("kim", PersonRole.Keeper)] : Array.Empty<Person>(),
        ];
        var book = Gardens.With(people, [.. Enumerable.Range(0, 6).Select(i => Gardens.Job($"j{i}", random.Next(2, 18) * 10, people: random.Next(1, 3), value: random.Next(1, 90)))]) with
        {
            Sites = [Alerts.Home],
            Areas = [new("bed", "Bed", "home", Exposure.Open), new("far-bed", "Far bed", "home", Exposure.Open)],
        };
        var reach = new Reach(random.Next(2) == 0 ? new Dictionary<string, IReadOnlyList<string>> { ["bo"] = ["push:one"] } : new Dictionary<string, IReadOnlyList<string>>()) { Weekly = new HashSet<string> { "kim" } };
        var desk = new KeptDesk(book, reach, random.Next(2) == 0 ? new QuietHours(new(21, 0), new(6, 30), Gardens.Zone) : null);
        var ledger = AdvisoryLedger.Empty;
        var hours = random.NextDouble() * 24;
        for (var step = 0; step < 60; step++)
        {
            var now = Alerts.At(hours);
            if (random.Next(3) == 0) ledger = ledger.With(Heard(random, step, hours), now);
            var job = $"j{random.Next(6)}";
            if (random.Next(3) == 0) desk.Jobs[job] = new(job, (JobProgress)random.Next(5), now, people[random.Next(2)].Id, random.Next(4) is > 0 and var why ? (CannotWhy)(why - 1) : null);
            if (random.Next(6) == 0) desk.SaidIn[people[random.Next(2)].Id] = now;
            Hold(desk.At(ledger, now), now);
            hours += random.Next(4) == 0 ? random.NextDouble() * 9 : random.NextDouble();
        }

        Hold(desk);
    }

    /// <summary>Watches, warnings, orders, wind by hand, and their end, in no sensible order.</summary>
    private static Advisory Heard(Random random, int step, double hours) => random.Next(7) switch
    {
        0 => Alerts.Message($"a{step}", hours, Alerts.Info("Tropical Storm Watch", expires: hours + 30)),
        1 => Alerts.Message($"a{step}", hours, Alerts.Info(expires: hours + 40)),
        2 => Alerts.Message($"a{step}", hours, Alerts.Info("Tornado Warning", eventEnds: hours + 1, expires: hours + 1, responses: [AlertResponse.Shelter])),
        3 => Alerts.Message($"a{step}", hours, Alerts.Info("Evacuation Immediate", expires: hours + 4, responses: [AlertResponse.Evacuate])),
        4 => new LeaveByNote("plot", "ada", Alerts.At(hours), Alerts.At(hours + (random.NextDouble() * 20))),
        5 => new AllClearNote("plot", "ada", Alerts.At(hours)),
        _ => new WindNote("plot", "ada", Alerts.At(hours), Alerts.At(hours + (random.NextDouble() * 40)), 15 + random.Next(30), random.Next(2) == 0 ? Alerts.At(hours + 50) : null),
    };

    private static void Hold(Decision decision, Instant now)
    {
        Assert.Equal(decision.Wanted.Count, decision.Wanted.Select(reminder => reminder.Key.ToString()).Distinct().Count());
        Assert.All(decision.Wanted, reminder => Assert.True(now < reminder.UsefulUntil && reminder.Moment < reminder.UsefulUntil, $"{reminder.Key} is of no use"));
        if (decision.Standing.Stage.Stage == Stage.GardenClosed) Assert.All(decision.Wanted, reminder => Assert.Empty(reminder.Brief.Jobs));
    }

    private static void Hold(KeptDesk desk)
    {
        foreach (var one in desk.Sent.GroupBy(sent => (sent.Reminder.To.Id, sent.Reminder.Key.Channel)))
        {
            var counted = one.Where(sent => !Apart.Contains(sent.Reminder.Key.Reason) && !IsClosing(sent.Reminder.Key)).Select(sent => sent.At).ToList();
            Assert.All(counted, at => Assert.InRange(counted.Count(other => other <= at && at - other < Duration.FromHours(24)), 1, Rationing.MostADay));
            var late = one.Where(sent => sent.Reminder.Key.Reason == ReminderReason.Late).Select(sent => sent.At).ToList();
            Assert.All(late.Zip(late.Skip(1)), pair => Assert.True(pair.Second - pair.First >= Duration.FromHours(2), "late work twice within two hours"));
            if (one.Key.Channel == Reach.Second) Assert.All(one, sent => Assert.Equal(ReminderReason.Late, sent.Reminder.Key.Reason));
            if (one.Key.Id == "kim") Assert.DoesNotContain(one, sent => sent.Reminder.Key.Reason is ReminderReason.Late or ReminderReason.WorkDay);
        }

        var calm = desk.Sent.Where(sent => sent.Reminder.Key.Reason == ReminderReason.Listening).ToList();
        Assert.All(calm.Zip(calm.Skip(1)), pair => Assert.True(pair.Second.At - pair.First.At >= Duration.FromDays(7)));
    }

    private static bool IsClosing(ReminderKey key) => key.Occasion.StartsWith("GardenClosed-", StringComparison.Ordinal);
}
