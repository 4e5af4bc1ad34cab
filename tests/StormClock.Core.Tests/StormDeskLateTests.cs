using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;
using static StormClock.Core.Tests.KeptDesk;

namespace StormClock.Core.Tests;

/// <summary>The one door when things do not go as told: work that nobody does, an order that is taken back.</summary>
public class StormDeskLateTests
{
    /// <summary>Start by passed and nobody has said a word: told once in two hours, and no more once it is begun.</summary>
    [Fact]
    public void Decide_WorkNotDoneByItsHour_IsToldLateOnceInTwoHours()
    {
        // The long job that waits for the short one makes the short one due three hours before its own last start.
        var book = Book with
        {
            Items = [Book.Items[0] with { Jobs = [Gardens.Job("tie", 30, value: 50), Gardens.Job("long", 180, value: 20, after: "tie")] }, Book.Items[1] with { Jobs = [] }],
        };
        var desk = new KeptDesk(book);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new WindNote("plot", "ada", Morning, Alerts.At(8), 40, null));
        var due = desk.At(ledger, Morning).Plan!.Jobs.Single(job => job.Job.Id == "tie").StartBy + Duration.FromMinutes(15);
        Assert.Empty(Late(desk.At(ledger, due - Duration.FromMinutes(1))));

        var first = Late(desk.At(ledger, due));
        Assert.NotEmpty(first);
        Assert.Equal(first, Late(desk.At(ledger, due + Duration.FromMinutes(5))));
        desk.Jobs["tie"] = new("tie", JobProgress.Started, due, "ada");
        Assert.Empty(Late(desk.At(ledger, due + Duration.FromMinutes(10))));

        static List<string> Late(Decision decision) => [.. decision.Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.Late).Select(reminder => reminder.Key.ToString())];
    }

    /// <summary>The person first, with the next message everybody, with the one after that the second address; never two within two hours.</summary>
    [Fact]
    public void Decide_WorkThatNobodyDoes_IsToldToMorePeopleWithEachMessage()
    {
        var (desk, ledger, due) = Waiting([Gardens.Person("ada") with { SecondEmail = "ada@elsewhere.invalid" }, Gardens.Person("bo", PersonRole.Helper) with { DaysOff = [new(2027, 9, 21)] }, Gardens.Person("kim", PersonRole.Keeper)]);
        for (var at = due; at < due + Duration.FromHours(6); at += Duration.FromMinutes(15)) desk.At(ledger, at);
        var rounds = desk.Sent.Where(sent => sent.Reminder.Key.Reason == ReminderReason.Late).GroupBy(sent => sent.At).OrderBy(round => round.Key).ToList();
        Assert.Equal(
            ["ada/email", "ada/email bo/email", "ada/email ada/email:second bo/email"],
            rounds.Take(3).Select(round => string.Join(' ', round.Select(sent => $"{sent.Reminder.To.Id}/{sent.Reminder.Key.Channel}").Order())));
        Assert.All(rounds.Zip(rounds.Skip(1)), pair => Assert.True(pair.Second.Key - pair.First.Key >= Duration.FromHours(2)));
    }

    /// <summary>Whoever began when told is at it until it should have ended, though the last start is past: that is not late.</summary>
    [Fact]
    public void Decide_WorkThatMayBeUnderWay_IsNotLate()
    {
        var book = Book with { Items = [Book.Items[0] with { Jobs = [Gardens.Job("tie", 60, value: 50)] }, Book.Items[1] with { Jobs = [] }] };
        var desk = new KeptDesk(book);
        var ledger = Alerts.Ledger(new WindNote("plot", "ada", Morning, Alerts.At(2), 40, null));
        var told = Assert.Single(desk.At(ledger, Morning).Plan!.Jobs);
        Assert.True(told.StartBy + Duration.FromMinutes(15) < told.End, "the last start leaves no doubt: the test needs another stop");
        for (var at = Morning; at < told.End + Duration.FromMinutes(15); at += Duration.FromMinutes(5)) Assert.Empty(Late(desk.At(ledger, at)));
        Assert.NotEmpty(Late(desk.At(ledger, told.End + Duration.FromMinutes(15))));
    }

    /// <summary>The last start in the message is the one that people had been told, however often the plan was made anew since.</summary>
    [Fact]
    public void Decide_LateWork_NamesTheLastStartThatWasTold()
    {
        var (desk, ledger, due) = Waiting([Gardens.Person("ada"), Gardens.Person("bo", PersonRole.Helper)]);
        var told = desk.At(ledger, due).Wanted.First(reminder => reminder.Key.Reason == ReminderReason.Late).Brief.Jobs.Single(job => job.Token == "tie");
        Assert.Equal(due - Duration.FromMinutes(15), told.StartBy);
    }

    /// <summary>A night between two messages says as much as a third one would.</summary>
    [Fact]
    public void Decide_LateAgainAfterALongSilence_GoesToTheSecondAddressWithTheSecondMessage()
    {
        var (desk, ledger, due) = Waiting([Gardens.Person("ada") with { SecondEmail = "ada@elsewhere.invalid" }, Gardens.Person("bo", PersonRole.Helper) with { DaysOff = [new(2027, 9, 21)] }], stopHours: 16);
        desk.At(ledger, due);
        desk.At(ledger, due + Duration.FromMinutes(30));
        for (var hours = 5.0; hours <= 6.5; hours += 0.25) desk.At(ledger, due + Duration.FromHours(hours));
        var second = desk.Sent.First(sent => sent.Reminder.Key.Channel == Reach.Second);
        Assert.Equal(due + Duration.FromHours(6), second.At);
        Assert.InRange(desk.Sent.Where(sent => sent.Reminder.Key.Reason == ReminderReason.Late).Select(sent => sent.Reminder.Key.Occasion).Distinct().Count(), 1, 2);
    }

    /// <summary>A new plan has another job late: that begins nothing anew while nobody has answered a thing.</summary>
    [Fact]
    public void Decide_OtherWorkLateAndStillNoAnswer_GoesToTheSecondAddressToo()
    {
        var (desk, ledger, due) = Waiting([Gardens.Person("ada") with { SecondEmail = "ada@elsewhere.invalid" }, Gardens.Person("bo", PersonRole.Helper) with { DaysOff = [new(2027, 9, 21)] }]);
        var others = due + Duration.FromHours(4);
        for (var at = due; at < others; at += Duration.FromMinutes(15)) desk.At(ledger, at);
        Assert.DoesNotContain(desk.Sent, sent => sent.Reminder.Key.Channel == Reach.Second);

        // Done without a word by link, as the gardener wrote in before.
        desk.Jobs["tie"] = new("tie", JobProgress.Done, Morning, "ada");
        for (var at = others; at < others + Duration.FromHours(3); at += Duration.FromMinutes(15)) desk.At(ledger, at);
        Assert.Contains(desk.Sent, sent => sent.Reminder.Key.Channel == Reach.Second && sent.At >= others);
        Assert.DoesNotContain(desk.Sent.Where(sent => sent.At >= others && sent.Reminder.Key.Reason == ReminderReason.Late), sent => sent.Reminder.Brief.Jobs.Any(job => job.Token == "tie"));
    }

    [Theory]
    [InlineData(JobProgress.Later, null)]
    [InlineData(JobProgress.Cannot, CannotWhy.NoTime)]
    [InlineData(JobProgress.Cannot, CannotWhy.NeedsPerson)]
    public void Decide_LateWorkAnsweredLater_IsLeftAloneForTwoHours(JobProgress progress, CannotWhy? why)
    {
        var (desk, ledger, due) = Waiting([Gardens.Person("ada"), Gardens.Person("bo", PersonRole.Helper)]);
        Assert.NotEmpty(Late(desk.At(ledger, due)));
        var answered = due + Duration.FromMinutes(5);
        desk.Jobs["tie"] = new("tie", progress, answered, "ada", why);
        for (var at = answered; at < answered + Duration.FromHours(2); at += Duration.FromMinutes(10)) Assert.DoesNotContain(Late(desk.At(ledger, at)), reminder => reminder.Brief.Jobs.Any(job => job.Token == "tie"));
    }

    private static IEnumerable<Reminder> Late(Decision decision) => decision.Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.Late);

    /// <summary>One short job that three others wait for, due well before the work stops; and the moment from which it is late.</summary>
    private static (KeptDesk Desk, AdvisoryLedger Ledger, Instant Due) Waiting(Person[] people, double stopHours = 10)
    {
        var book = Book with
        {
            People = people,
            Items = [Book.Items[0] with { Jobs = [Gardens.Job("tie", 30, value: 50), Gardens.Job("long", 180, value: 20, after: "tie"), Gardens.Job("short", 90, value: 20, after: "tie"), Gardens.Job("least", 45, value: 20, after: "tie")] }, Book.Items[1] with { Jobs = [] }],
        };
        var desk = new KeptDesk(book);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new WindNote("plot", "ada", Morning, Alerts.At(stopHours), 40, null));
        return (desk, ledger, desk.At(ledger, Morning).Plan!.Jobs.Single(job => job.Job.Id == "tie").StartBy + Duration.FromMinutes(15));
    }

    /// <summary>An order that was told and is taken back while the storm goes on: said once.</summary>
    [Fact]
    public void Decide_LeaveByTakenBack_IsToldOnce()
    {
        var desk = new KeptDesk(Book);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new LeaveByNote("plot", "ada", Morning, Alerts.At(20)));
        Assert.Contains(desk.At(ledger, Morning).Wanted, reminder => reminder.Key.Reason == ReminderReason.Leave);
        ledger = ledger.With(new AllClearNote("plot", "ada", Alerts.At(1)), Alerts.At(1));
        Assert.Equal(2, desk.At(ledger, Alerts.At(1)).Wanted.Count(reminder => reminder.Key.Reason == ReminderReason.OrderLifted));
        var again = desk.At(ledger, Alerts.At(2)).Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.OrderLifted).ToList();
        Assert.All(again, reminder => Assert.True(reminder.Moment <= Alerts.At(1)));
        Assert.DoesNotContain(desk.At(ledger, Alerts.At(2)).Wanted, reminder => reminder.Key.Reason == ReminderReason.Leave);
    }
}
