using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;
using static StormClock.Core.Tests.KeptDesk;

namespace StormClock.Core.Tests.Reminders;

/// <summary>"I am in" at Garden closed, and who is told when it stays unpressed (product.md 6).</summary>
public class InRemindersTests
{
    /// <summary>Wind by a note, so that the garden is closed from hour 6 on.</summary>
    private static readonly AdvisoryLedger Wind = Alerts.Ledger(new WindNote("plot", "ada", Morning, Alerts.At(6), 27, null));

    [Fact]
    public void Decide_NobodySaysIn_EachIsToldOnceOfTheOtherAnHourAfterClosing()
    {
        var desk = Closed(new KeptDesk(Book));
        Assert.Empty(After(desk, 6.9));
        Assert.Equal(["ada: bo", "bo: ada"], After(desk, 7));
        Assert.Equal(["ada: bo", "bo: ada"], After(desk, 7.5));
        Assert.Equal(2, desk.Sent.Count(sent => sent.Reminder.Key.Reason == ReminderReason.NotIn));
        Assert.All(desk.Sent.Where(sent => sent.Reminder.Key.Reason == ReminderReason.NotIn), sent => Assert.True(sent.Reminder.Urgent && sent.Reminder.Brief.Jobs.Count == 0));
    }

    [Fact]
    public void Decide_TheNextMessage_SaysWhoIsIn()
    {
        var desk = Closed(new KeptDesk(Book));
        desk.SaidIn["ada"] = Alerts.At(6.2);
        var brief = desk.At(Wind, Alerts.At(7)).Wanted.Single(reminder => reminder.Key.Reason == ReminderReason.NotIn).Brief;
        Assert.Equal([new SaidIn("ada", "ada", Alerts.At(6.2))], brief.In);
        Assert.Equal(["bo"], brief.NotHeardOf);
        Assert.Equal(Alerts.At(6), brief.ClosedSince);
    }

    [Theory]
    [InlineData("ada", "ada: bo")]
    [InlineData("bo", "bo: ada")]
    [InlineData("ada bo", "")]
    public void Decide_SomeSaidIn_OnlyTheOthersAreTold(string isIn, string told)
    {
        var desk = Closed(new KeptDesk(Book));
        foreach (var person in isIn.Split(' ')) desk.SaidIn[person] = Alerts.At(6.2);
        Assert.Equal(told, string.Join(", ", After(desk, 7)));
    }

    /// <summary>Helpers are told of the gardener alone, the gardener of everybody; the keeper only where nobody else can phone.</summary>
    [Theory]
    [InlineData("ada cy bo", "ada: bo, cy", "bo: ada", "cy: ada")]
    [InlineData("ada kim bo", "ada: bo", "bo: ada")]
    [InlineData("ada kim", "kim: ada")]
    [InlineData("ada")]
    public void Decide_NobodySaysIn_TellsThoseWhoCanPhone(string people, params string[] told)
    {
        Person[] all = [.. people.Split(' ').Select(id => Gardens.Person(id, id switch { "ada" => PersonRole.Gardener, "kim" => PersonRole.Keeper, _ => PersonRole.Helper }))];
        var desk = Closed(new KeptDesk(Book with { People = [.. all.OrderBy(person => person.Id)] }));
        Assert.Equal(told, After(desk, 7));
    }

    [Fact]
    public void Decide_NobodyCanAnswer_NobodyIsTold() =>
        Assert.Empty(After(Closed(new KeptDesk(Book, Reach.MailOnly with { CanAnswer = false })), 7));

    [Fact]
    public void Decide_InTheQuietHours_IsToldAllTheSame() =>
        Assert.Equal(2, After(Closed(new KeptDesk(Book, quiet: new(new(0, 0), new(23, 59), Gardens.Zone))), 7).Count);

    /// <summary>People who leave are not asked whether they are in.</summary>
    [Fact]
    public void Decide_OrderToLeave_NobodyIsTold()
    {
        var desk = Closed(new KeptDesk(Book));
        var ledger = Wind.With(new LeaveByNote("plot", "ada", Alerts.At(6.5), Alerts.At(6.6)), Alerts.At(6.5));
        Assert.DoesNotContain(desk.At(ledger, Alerts.At(7)).Wanted, reminder => reminder.Key.Reason == ReminderReason.NotIn);
    }

    /// <summary>A box that slept through the storm, and a message whose use is over.</summary>
    [Fact]
    public void Decide_HalfADayLater_IsNotSent() => Assert.Empty(After(Closed(new KeptDesk(Book)), 20));

    [Fact]
    public void Decide_Recheck_IsNotSent()
    {
        var desk = Closed(new KeptDesk(Book));
        desk.At(Wind, Alerts.At(6.5));
        for (var hours = 40.0; hours < 80; hours++)
        {
            var decision = desk.At(Wind.With(new AllClearNote("plot", "ada", Alerts.At(30)), Alerts.At(30)), Alerts.At(hours));
            if (decision.Standing.Stage.Stage == Stage.Recheck) Assert.DoesNotContain(decision.Wanted, reminder => reminder.Key.Reason == ReminderReason.NotIn);
        }

        Assert.DoesNotContain(desk.Sent, sent => sent.Reminder.Key.Reason == ReminderReason.NotIn);
    }

    /// <summary>The gardener is asked again after three days, so the first list must not call itself the last; helpers are asked once.</summary>
    [Fact]
    public void Decide_Recheck_NamesWhenItIsAskedAgain()
    {
        var desk = Closed(new KeptDesk(Book));
        var ledger = Wind.With(new AllClearNote("plot", "ada", Alerts.At(30)), Alerts.At(30));
        for (var hours = 30.0; hours < 24 * 6; hours += 2) desk.At(ledger, Alerts.At(hours));
        var lists = desk.Sent.Where(sent => sent.Reminder.Key.Reason == ReminderReason.Recheck).ToList();
        Assert.Equal(["ada first", "bo first", "ada day-3"], lists.Select(sent => $"{sent.Reminder.To.Id} {sent.Reminder.Key.Occasion}"));
        Assert.Equal([Duration.FromDays(3), null, Duration.FromDays(7)], lists.Select(sent => sent.Reminder.Brief.NextBy - lists[0].At));
    }

    /// <summary>Shelter, open again, closed again: an old word says nothing of where somebody is now, and each closing has its own key.</summary>
    [Fact]
    public void Decide_ClosedAgain_AsksAgain()
    {
        var desk = new KeptDesk(Book);
        AlertMessage Shelter(string id, double from) => Alerts.Message(id, from, Alerts.Info("Tornado Warning", eventEnds: from + 2, expires: from + 2, responses: [AlertResponse.Shelter]));
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 60)), Shelter("s1", 1));
        desk.At(ledger, Alerts.At(1));
        desk.SaidIn["ada"] = desk.SaidIn["bo"] = Alerts.At(1.1);
        Assert.Empty(NotIn(desk.At(ledger, Alerts.At(2.2))));
        desk.At(ledger, Alerts.At(3.5));
        ledger = ledger.With(Shelter("s2", 4), Alerts.At(4));
        desk.At(ledger, Alerts.At(4));
        Assert.Equal(["ada: bo", "bo: ada"], NotIn(desk.At(ledger, Alerts.At(5.1))));
    }

    private static KeptDesk Closed(KeptDesk desk)
    {
        desk.At(Wind, Morning);
        Assert.Equal(Stage.GardenClosed, desk.At(Wind, Alerts.At(6)).Standing.Stage.Stage);
        return desk;
    }

    private static List<string> After(KeptDesk desk, double hours) => NotIn(desk.At(Wind, Alerts.At(hours)));

    private static List<string> NotIn(Decision decision) =>
        [.. decision.Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.NotIn).Select(reminder => $"{reminder.To.Id}: {string.Join(", ", reminder.Brief.NotHeardOf)}")];
}
