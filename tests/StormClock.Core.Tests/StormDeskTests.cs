using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Tests.Hazards;

namespace StormClock.Core.Tests;

/// <summary>The one door, fed with invented messages: who outranks whom, and what is never said.</summary>
public class StormDeskTests
{
    /// <summary>Morning of a work day at the garden (08:00 local).</summary>
    private static readonly Instant Morning = Alerts.Start;

    private static GardenBook Book => Gardens.With(
        [Gardens.Person("ada"), Gardens.Person("bo", PersonRole.Helper)],
        Gardens.Job("tie", 60, value: 50), Gardens.Job("lay", 30, WorkClass.Carry, people: 2, value: 80)) with
    {
        Sites = [Alerts.Home],
        Areas = [new("bed", "Bed", "home", Exposure.Open), new("far-bed", "Far bed", "home", Exposure.Open)],
    };

    [Fact]
    public void Decide_SameInputTwice_DecidesTheSame()
    {
        var ledger = Alerts.Ledger(SampleStorms.Ian16);
        var book = Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] };
        var now = SampleStorms.Ian16.IssuedAt;
        Assert.Equal(Told(new Desk(book), ledger, now), Told(new Desk(book), ledger, now));

        static string Told(Desk desk, AdvisoryLedger ledger, Instant now)
        {
            var decision = desk.At(ledger, now);
            var jobs = decision.Plan!.Jobs.Select(job => $"{job.Job.Id} {string.Join('+', job.People)} {job.Start} {job.StartBy} {job.ChanceDone}");
            var wanted = decision.Wanted.Select(reminder => $"{reminder.Key} {reminder.Moment} {reminder.UsefulUntil}");
            return string.Join('\n', [decision.Standing.Stage.ToString(), .. jobs, .. wanted, $"{decision.NextWake}"]);
        }
    }

    [Fact]
    public void Decide_NothingHeard_WantsNothing()
    {
        var decision = new Desk(Book).At(AdvisoryLedger.Empty, Morning);
        Assert.Equal(Stage.NothingDue, decision.Standing.Stage.Stage);
        Assert.Empty(decision.Wanted);
        Assert.Null(decision.NextWake);
    }

    /// <summary>The same wish once for each way a person is reached, under keys that differ in the channel alone; nobody without a way is told.</summary>
    [Fact]
    public void Decide_PeopleWithFurtherChannels_WantsEachMessageOnceOnEach()
    {
        var book = Book with { People = [.. Book.People.Select(person => person.Id == "bo" ? person with { Email = null } : person)] };
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)));
        var reach = new Reach(new Dictionary<string, IReadOnlyList<string>> { ["ada"] = ["push:one", "push:two"], ["stranger"] = ["webhook"] });
        var wanted = new StormDesk().Decide(ledger, book, GardenStanding.Calm(Morning), new Dictionary<string, JobState>(), new Dictionary<string, Instant>(), Morning, reach: reach).Wanted;

        var byChannel = wanted.ToLookup(reminder => reminder.Key.Channel, reminder => reminder.Key with { Channel = "" });
        Assert.Equal(["email", "push:one", "push:two"], byChannel.Select(channel => channel.Key).Order());
        Assert.All(byChannel, channel => Assert.Equal(byChannel["email"], channel));
        Assert.All(wanted, reminder => Assert.Equal("ada", reminder.To.Id));
    }

    [Fact]
    public void Decide_WarningAlone_IsMainWorkByThatWarning()
    {
        var warning = Alerts.Message("w", 0, Alerts.Info(expires: 40));
        var decision = new Desk(Book).At(Alerts.Ledger(warning), Morning);
        Assert.Equal((Stage.MainWork, StageCause.Alert, "Tropical Storm Warning"), (decision.Standing.Stage.Stage, decision.Standing.Stage.Reason.Cause, decision.Standing.Stage.Reason.Source));
        Assert.Equal(2, decision.Plan!.Jobs.Count);
        Assert.Equal(["ada", "bo"], decision.Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.StageChanged).Select(reminder => reminder.To.Id).Order());
    }

    [Theory]
    [InlineData(AlertStatus.Test)]
    [InlineData(AlertStatus.Exercise)]
    [InlineData(AlertStatus.Draft)]
    public void Decide_AlertThatIsNotActual_MovesNobody(AlertStatus status)
    {
        var warning = Alerts.Message("w", 0, Alerts.Info(expires: 40)) with { Status = status };
        Assert.Equal(Stage.NothingDue, new Desk(Book).At(Alerts.Ledger(warning), Morning).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_EvacuationInForce_LeavesAndShowsNoWork()
    {
        var order = Alerts.Message("e", 0, Alerts.Info("Evacuation Immediate", expires: 40, responses: [AlertResponse.Evacuate]));
        var decision = new Desk(Book).At(Alerts.Ledger(order), Morning);
        Assert.Equal((Stage.GardenClosed, StageCause.Order), (decision.Standing.Stage.Stage, decision.Standing.Stage.Reason.Cause));
        var leave = decision.Wanted.Single(reminder => reminder.To.Id == "ada");
        Assert.Equal((ReminderReason.Leave, true, true), (leave.Key.Reason, leave.Urgent, leave.Brief.Leave));
        Assert.All(decision.Wanted, reminder => Assert.Empty(reminder.Brief.Jobs));
    }

    [Fact]
    public void Decide_EvacuationForAnUndecidableArea_IsToldButClosesNothing()
    {
        var order = Alerts.Message("e", 0, Alerts.Info("Evacuation Immediate", Alerts.Somewhere, expires: 40, responses: [AlertResponse.Evacuate]));
        var stage = new Desk(Book).At(Alerts.Ledger(order), Morning).Standing.Stage;
        Assert.Equal((Stage.LookOver, StageCause.UnmatchedAlert), (stage.Stage, stage.Reason.Cause));
    }

    [Fact]
    public void Decide_ShelterOrderEnds_ForecastSpeaksAgain()
    {
        var desk = new Desk(Book);
        var warning = Alerts.Message("w", 0, Alerts.Info(expires: 60));
        var shelter = Alerts.Message("s", 1, Alerts.Info("Tornado Warning", eventEnds: 2, expires: 2, responses: [AlertResponse.Shelter]));
        var ledger = Alerts.Ledger(warning, shelter);
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, Alerts.At(1)).Standing.Stage.Stage);
        Assert.Equal(Stage.MainWork, desk.At(ledger, Alerts.At(2.5)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_LeaveByAhead_PlansBeforeItAndClosesAtIt()
    {
        var desk = new Desk(Book);
        var leaveBy = Alerts.At(4);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new LeaveByNote("plot", "ada", Morning, leaveBy));
        var before = desk.At(ledger, Morning);
        Assert.NotEmpty(before.Plan!.Jobs);
        Assert.All(before.Plan.Jobs, job => Assert.True(job.End <= leaveBy));
        Assert.Contains(before.Wanted, reminder => reminder.Key.Reason == ReminderReason.Leave && reminder.Brief.LeaveBy == leaveBy);
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, leaveBy).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_WindNote_ClosesAtItsTimeAndIsNotUndoneByAQuietForecast()
    {
        var desk = new Desk(Book);
        var ledger = Alerts.Ledger(new WindNote("plot", "ada", Morning, Alerts.At(6), 27, null));
        var decision = desk.At(ledger, Morning);
        Assert.Equal(Stage.LastRound, decision.Standing.Stage.Stage);
        Assert.All(decision.Plan!.Jobs, job => Assert.True(job.End <= Alerts.At(6)));
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, Alerts.At(6)).Standing.Stage.Stage);
    }

    /// <summary>Told to shelter, people must not be told to leave.</summary>
    [Fact]
    public void Decide_ShelterInForce_ClosesWithoutAWordOfLeaving()
    {
        var shelter = Alerts.Message("s", 0, Alerts.Info("Tornado Warning", eventEnds: 2, responses: [AlertResponse.Shelter]));
        var ledger = Alerts.Ledger(shelter, new LeaveByNote("plot", "ada", Morning, Alerts.At(6)));
        var decision = new Desk(Book).At(ledger, Morning);
        Assert.Equal((Stage.GardenClosed, OfficialOrder.Shelter), (decision.Standing.Stage.Stage, decision.Order));
        Assert.NotEmpty(decision.Wanted);
        Assert.All(decision.Wanted, reminder => Assert.False(reminder.Brief.Leave || reminder.Brief.LeaveBy is not null || reminder.Brief.Jobs.Count > 0));
    }

    [Fact]
    public void Decide_EvacuationMessageRunsOut_HoldsOnForADay()
    {
        var desk = new Desk(Book);
        var ledger = Alerts.Ledger(Alerts.Message("e", 0, Alerts.Info("Evacuation Immediate", expires: 6, responses: [AlertResponse.Evacuate])));
        desk.At(ledger, Morning);
        Assert.Equal(OfficialOrder.Evacuate, desk.At(ledger, Alerts.At(20)).Order);
        Assert.Equal(OfficialOrder.None, desk.At(ledger, Alerts.At(31)).Order);
    }

    [Fact]
    public void Decide_WeakerWindNoteToo_NeverSwitchesOffTheStronger()
    {
        var ledger = Alerts.Ledger(
            new WindNote("plot", "ada", Morning, Alerts.At(6), 40, null), new WindNote("plot", "ada", Alerts.At(0.1), Alerts.At(4), 13, null));
        var decision = new Desk(Book).At(ledger, Alerts.At(0.2));
        Assert.Equal(Alerts.At(6), decision.Plan!.WorkStops[WorkClass.Ground].Earliest);
        Assert.Equal(Alerts.At(4), decision.Plan.WorkStops[WorkClass.Sheet].Earliest);
    }

    [Fact]
    public void Decide_LeaveByAheadThenNow_IsToldOnceEach()
    {
        var desk = new Desk(Book);
        var ledger = Alerts.Ledger(new LeaveByNote("plot", "ada", Morning, Alerts.At(4)));
        var ahead = desk.At(ledger, Morning).Wanted.Single(reminder => reminder.Key.Reason == ReminderReason.Leave && reminder.To.Id == "ada");
        var now = Assert.Single(desk.At(ledger, Alerts.At(4)).Wanted, reminder => reminder.To.Id == "ada");
        Assert.Equal(ReminderReason.Leave, now.Key.Reason);
        Assert.NotEqual(ahead.Key, now.Key);
        Assert.Equal(StageCause.Order, now.Brief.Reason.Cause);
    }

    /// <summary>Only warnings, no forecast: three hours after the last of them, and never before.</summary>
    [Fact]
    public void Decide_WarningsAloneCancelled_LooksThreeHoursLater()
    {
        var desk = new Desk(Book);
        var warning = Alerts.Message("w", -30, Alerts.Info(expires: 60));
        var cancel = Alerts.Message("c", 1, null, AlertMessageType.Cancel, warning);
        Assert.Equal(Stage.GardenClosed, desk.At(Alerts.Ledger(warning), Morning).Standing.Stage.Stage);
        var ledger = Alerts.Ledger(warning, cancel);
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, Alerts.At(2.5)).Standing.Stage.Stage);
        Assert.Equal(Stage.Recheck, desk.At(ledger, Alerts.At(3.1)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_BeforeTheEnd_NeverCallsAMessageTheLast()
    {
        var decision = new Desk(Book).At(Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40))), Morning);
        Assert.All(decision.Wanted, reminder => Assert.True(reminder.Brief.NextBy <= decision.Plan!.WorkStops[WorkClass.Ground].Earliest));
    }

    [Fact]
    public void Decide_AllClearNote_NeverEndsAnOfficialAlert()
    {
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new AllClearNote("plot", "ada", Alerts.At(1)));
        Assert.Equal(Stage.MainWork, new Desk(Book).At(ledger, Alerts.At(2)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_ForecastGoesSilent_TellsSoAndNeverFalls()
    {
        var desk = new Desk(Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] });
        var ledger = Alerts.Ledger(SampleStorms.Ian16);
        var heard = desk.At(ledger, SampleStorms.Ian16.IssuedAt);
        Assert.DoesNotContain(heard.Wanted, reminder => reminder.Key.Reason == ReminderReason.FeedSilent);
        var silent = desk.At(ledger, SampleStorms.Ian16.IssuedAt + Duration.FromHours(9.5));
        Assert.Contains(silent.Wanted, reminder => reminder.Key.Reason == ReminderReason.FeedSilent && reminder.To.Role == PersonRole.Gardener);
        Assert.True(silent.Standing.Stage.Stage >= heard.Standing.Stage.Stage);
    }

    /// <summary>Hour by hour through a whole storm: never work in the dark hours of the stage, never a message after its use.</summary>
    [Fact]
    public void Decide_EveryHourOfAStorm_NeverAsksForWorkOnceClosed()
    {
        var desk = new Desk(Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] });
        var ledger = Alerts.Ledger(SampleStorms.Ian16);
        var stages = new List<Stage>();
        for (var hour = 0; hour < 100; hour++)
        {
            var now = SampleStorms.Ian16.IssuedAt + Duration.FromHours(hour);
            var decision = desk.At(ledger, now);
            stages.Add(decision.Standing.Stage.Stage);
            Assert.All(decision.Wanted, reminder => Assert.True(now < reminder.UsefulUntil));
            if (stages.Contains(Stage.GardenClosed))
            {
                Assert.All(decision.Wanted.Where(reminder => reminder.Key.Reason != ReminderReason.Recheck), reminder => Assert.Empty(reminder.Brief.Jobs));
            }
        }

        Assert.Contains(Stage.GardenClosed, stages);
        Assert.Equal(stages.Order(), stages);
    }

    [Fact]
    public void Decide_JobDone_LeavesThePlanAndAnotherEpisodeAsksAgain()
    {
        var desk = new Desk(Book);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)));
        desk.At(ledger, Morning);
        desk.Jobs["tie"] = new("tie", JobProgress.Done, Morning, "ada");
        Assert.DoesNotContain(desk.At(ledger, Alerts.At(1)).Plan!.Jobs, job => job.Job.Id == "tie");
    }

    /// <summary>Nothing of the last storm, neither its stop time nor its done jobs, may reach into the next.</summary>
    [Fact]
    public void Decide_AnotherStormAfterTheRecheck_BeginsAfresh()
    {
        var book = Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] };
        var desk = new Desk(book);
        var ledger = Alerts.Ledger(SampleStorms.Ian16);
        for (var hour = 0; hour < 90; hour++) desk.At(ledger, SampleStorms.Ian16.IssuedAt + Duration.FromHours(hour));
        desk.Jobs["tie"] = new("tie", JobProgress.Done, SampleStorms.Ian16.IssuedAt, "ada");
        ledger = ledger.With(Gone(SampleStorms.Ian16.Synoptic + Duration.FromHours(90)), SampleStorms.Ian16.IssuedAt);
        var recheck = desk.At(ledger, SampleStorms.Ian16.IssuedAt + Duration.FromHours(106));
        Assert.Equal(Stage.Recheck, recheck.Standing.Stage.Stage);

        var began = SampleStorms.Ian16.Synoptic + Duration.FromHours(114);
        var second = SampleStorms.Storm(
            "AL102022", "NEXT", "1", began,
            [.. new double[] { 3, 12, 24, 36, 48, 60, 72, 96, 120 }.Select(lead =>
                SampleStorms.Point(lead, 20 + (lead / 15), -81.9, 70, new(120, 120, 120, 120), new(60, 60, 60, 60), new(25, 25, 25, 25)))]);
        var again = desk.At(ledger.With(second, second.IssuedAt), second.IssuedAt);
        Assert.InRange(again.Standing.Stage.Stage, Stage.LookOver, Stage.MainWork);
        Assert.NotEqual(recheck.Standing.Stage.EpisodeId, again.Standing.Stage.EpisodeId);
        Assert.Contains(again.Plan!.Jobs, job => job.Job.Id == "tie");

        static CycloneAdvisory Gone(Instant synoptic) => SampleStorms.Storm(
            "AL092022", "IAN", "31", synoptic, SampleStorms.Point(3, 42, -75, 25), SampleStorms.Point(12, 44, -72, 20)) with { Final = true };
    }

    /// <summary>Keeps what the service would keep between decisions.</summary>
    /// <summary>Every three hours from issue.</summary>
    private static PointForecast Local(Instant issued, params double[] gustsMps) => new(
        "the office", Alerts.Home.At, issued,
        [.. gustsMps.Select((gust, i) => new ForecastPeriod(issued + Duration.FromHours(3 * i), issued + Duration.FromHours(3 * i + 3), gust / 1.6, gust, null))]);

    /// <summary>A gale that is no cyclone: from the point forecast alone to work, closed, and look afterwards.</summary>
    [Fact]
    public void Decide_GaleByAPointForecastAlone_GoesThroughTheStages()
    {
        var desk = new Desk(Book);
        var ledger = Alerts.Ledger(Local(Morning, [5, 5, 5, 6, 8, 10, 12, 16, 26, 32, 32, 26, 12, 8, 6, 5, 5, 5, 5, 5]));
        var first = desk.At(ledger, Morning);
        Assert.Equal((Stage.MainWork, true, "point forecast by the office"), (first.Standing.Stage.Stage, first.Standing.Stage.Reason.IsLocal, first.Standing.Stage.Reason.Source));
        Assert.NotEmpty(first.Plan!.Jobs);
        Assert.All(first.Plan.Jobs, job => Assert.True(job.End <= Morning + Duration.FromHours(24)));

        var newer = Morning + Duration.FromHours(23);
        ledger = ledger.With(Local(newer, [20, 28, 32, 32, 24, 12, 8, 6, 5, 5, 5, 5, 5, 5]), newer);
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, newer + Duration.FromHours(2)).Standing.Stage.Stage);

        Instant after = newer + Duration.FromHours(24), later = newer + Duration.FromHours(25);
        ledger = ledger.With(Local(after, [6, 5, 5, 5, 5, 5, 5, 5]), after);
        desk.At(ledger, after);
        ledger = ledger.With(Local(later, [6, 5, 5, 5, 5, 5, 5, 5]), later);
        Assert.Equal(Stage.Recheck, desk.At(ledger, later).Standing.Stage.Stage);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(15)]
    public void Decide_FreshBreezeByAPointForecast_IsNothing(double gustMps) =>
        Assert.Equal(Stage.NothingDue, new Desk(Book).At(Alerts.Ledger(Local(Morning, 5, 5, gustMps, gustMps, 8, 5)), Morning).Standing.Stage.Stage);

    /// <summary>A breeze before the storm does not end the work for it, and the point forecast may bring the stop forward but not away.</summary>
    [Fact]
    public void Decide_CalmPointForecastUnderACyclone_TakesNothingAway()
    {
        var book = Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] };
        var now = SampleStorms.Ian16.IssuedAt;
        var alone = new Desk(book).At(Alerts.Ledger(SampleStorms.Ian16), now);
        var calm = Local(now, [5, 5, 9, 5, 5, 5, 5, 5]) with { At = SampleStorms.FortMyers };
        var both = new Desk(book).At(Alerts.Ledger(SampleStorms.Ian16, calm), now);
        Assert.Equal(alone.Standing.Stage.Stage, both.Standing.Stage.Stage);
        Assert.True(both.Plan!.WorkStops[WorkClass.Ground].Earliest <= alone.Plan!.WorkStops[WorkClass.Ground].Earliest);
        Assert.False(both.Standing.Stage.Reason.IsLocal);
    }

    private static GardenBook WithDrain
    {
        get
        {
            var book = Book;
            return book with { Items = [book.Items[0] with { Jobs = [.. book.Items[0].Jobs, Gardens.Job("grate", 20) with { Kind = JobKind.Drain }] }, .. book.Items.Skip(1)] };
        }
    }

    /// <summary>Rain alone is for work against water, and ends with the note (limits of science.md 4.3, C).</summary>
    [Theory]
    [InlineData(49, Stage.NothingDue)]
    [InlineData(50, Stage.LookOver)]
    [InlineData(75, Stage.SlowWork)]
    [InlineData(125, Stage.MainWork)]
    public void Decide_RainNoteAlone_IsForWorkAgainstWaterOnly(double mm, Stage stage)
    {
        var desk = new Desk(WithDrain);
        var note = new RainNote("plot", "ada", Morning, Morning + Duration.FromHours(6), mm, 5);
        var decision = desk.At(Alerts.Ledger(note), Morning);
        Assert.Equal(stage, decision.Standing.Stage.Stage);
        if (stage == Stage.NothingDue) return;

        Assert.Equal((StageCause.Rain, (double?)mm), (decision.Standing.Stage.Reason.Cause, decision.Standing.Stage.Reason.RainMm));
        Assert.Equal(["grate"], decision.Plan!.Jobs.Select(job => job.Job.Id));
        Assert.True(decision.Plan.Jobs[0].End <= note.From);
        Assert.Equal(Stage.NothingDue, desk.At(Alerts.Ledger(note), Morning + Duration.FromHours(13)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_RainByAPointForecast_TakesTheCarefulValue()
    {
        // 100 mm in the day: the 80 % value is 100 · e^(0.8416 · 0.5) = 152 mm (science.md 6).
        var wet = Local(Morning, 5, 5, 5, 5, 5, 5, 5, 5);
        wet = wet with { Periods = [.. wet.Periods.Select(period => period with { RainMm = 12.5 })] };
        var decision = new Desk(WithDrain).At(Alerts.Ledger(wet), Morning);
        Assert.Equal(Stage.MainWork, decision.Standing.Stage.Stage);
        Assert.Equal(152.3, decision.Standing.Stage.Reason.RainMm!.Value, 0.1);
    }

    /// <summary>Start by passed and nobody has said a word: once in two hours, to whose work it is, then to everybody; never after done.</summary>
    [Fact]
    public void Decide_WorkNotDoneByItsHour_IsToldLateOnceInTwoHours()
    {
        // The long job that waits for the short one makes the short one due three hours before its own last start.
        var book = Book with
        {
            Items = [Book.Items[0] with { Jobs = [Gardens.Job("tie", 30, value: 50), Gardens.Job("long", 180, value: 20, after: "tie")] }, Book.Items[1] with { Jobs = [] }],
        };
        var desk = new Desk(book);
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

    /// <summary>An order that was told and is taken back while the storm goes on: said once.</summary>
    [Fact]
    public void Decide_LeaveByTakenBack_IsToldOnce()
    {
        var desk = new Desk(Book);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new LeaveByNote("plot", "ada", Morning, Alerts.At(20)));
        Assert.Contains(desk.At(ledger, Morning).Wanted, reminder => reminder.Key.Reason == ReminderReason.Leave);
        ledger = ledger.With(new AllClearNote("plot", "ada", Alerts.At(1)), Alerts.At(1));
        Assert.Equal(2, desk.At(ledger, Alerts.At(1)).Wanted.Count(reminder => reminder.Key.Reason == ReminderReason.OrderLifted));
        var again = desk.At(ledger, Alerts.At(2)).Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.OrderLifted).ToList();
        Assert.All(again, reminder => Assert.True(reminder.Moment <= Alerts.At(1)));
        Assert.DoesNotContain(desk.At(ledger, Alerts.At(2)).Wanted, reminder => reminder.Key.Reason == ReminderReason.Leave);
    }

    private sealed class Desk(GardenBook book)
    {
        private readonly StormDesk desk = new();
        private readonly Dictionary<string, Instant> sent = [];
        private GardenStanding? standing;

        public Dictionary<string, JobState> Jobs { get; } = [];

        public Decision At(AdvisoryLedger ledger, Instant now)
        {
            var decision = desk.Decide(ledger, book, standing ?? GardenStanding.Calm(now), Jobs, sent, now);
            standing = decision.Standing;
            foreach (var reminder in decision.Wanted.Where(reminder => reminder.Moment <= now)) sent.TryAdd(reminder.Key.ToString(), now);
            return decision;
        }
    }
}
