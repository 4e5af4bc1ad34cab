using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Hazards;
using StormClock.Core.Loads;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Tests.Hazards;
using static StormClock.Core.Tests.KeptDesk;

namespace StormClock.Core.Tests;

/// <summary>The one door, fed with invented messages: who outranks whom, and what is never said.</summary>
public class StormDeskTests
{
    [Fact]
    public void Decide_SameInputTwice_DecidesTheSame()
    {
        var ledger = Alerts.Ledger(SampleStorms.Ian16);
        var book = Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] };
        var now = SampleStorms.Ian16.IssuedAt;
        Assert.Equal(Told(new KeptDesk(book), ledger, now), Told(new KeptDesk(book), ledger, now));

        static string Told(KeptDesk desk, AdvisoryLedger ledger, Instant now)
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
        var decision = new KeptDesk(Book).At(AdvisoryLedger.Empty, Morning);
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
        var decision = new KeptDesk(Book).At(Alerts.Ledger(warning), Morning);
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
        Assert.Equal(Stage.NothingDue, new KeptDesk(Book).At(Alerts.Ledger(warning), Morning).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_EvacuationInForce_LeavesAndShowsNoWork()
    {
        var order = Alerts.Message("e", 0, Alerts.Info("Evacuation Immediate", expires: 40, responses: [AlertResponse.Evacuate]));
        var decision = new KeptDesk(Book).At(Alerts.Ledger(order), Morning);
        Assert.Equal((Stage.GardenClosed, StageCause.Order), (decision.Standing.Stage.Stage, decision.Standing.Stage.Reason.Cause));
        var leave = decision.Wanted.Single(reminder => reminder.To.Id == "ada");
        Assert.Equal((ReminderReason.Leave, true, true), (leave.Key.Reason, leave.Urgent, leave.Brief.Leave));
        Assert.All(decision.Wanted, reminder => Assert.Empty(reminder.Brief.Jobs));
    }

    [Fact]
    public void Decide_EvacuationForAnUndecidableArea_IsToldButClosesNothing()
    {
        var order = Alerts.Message("e", 0, Alerts.Info("Evacuation Immediate", Alerts.Somewhere, expires: 40, responses: [AlertResponse.Evacuate]));
        var stage = new KeptDesk(Book).At(Alerts.Ledger(order), Morning).Standing.Stage;
        Assert.Equal((Stage.LookOver, StageCause.UnmatchedAlert), (stage.Stage, stage.Reason.Cause));
    }

    [Fact]
    public void Decide_ShelterOrderEnds_ForecastSpeaksAgain()
    {
        var desk = new KeptDesk(Book);
        var warning = Alerts.Message("w", 0, Alerts.Info(expires: 60));
        var shelter = Alerts.Message("s", 1, Alerts.Info("Tornado Warning", eventEnds: 2, expires: 2, responses: [AlertResponse.Shelter]));
        var ledger = Alerts.Ledger(warning, shelter);
        Assert.Equal(Stage.GardenClosed, desk.At(ledger, Alerts.At(1)).Standing.Stage.Stage);
        Assert.Equal(Stage.MainWork, desk.At(ledger, Alerts.At(2.5)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_LeaveByAhead_PlansBeforeItAndClosesAtIt()
    {
        var desk = new KeptDesk(Book);
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
        var desk = new KeptDesk(Book);
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
        var decision = new KeptDesk(Book).At(ledger, Morning);
        Assert.Equal((Stage.GardenClosed, OfficialOrder.Shelter), (decision.Standing.Stage.Stage, decision.Order));
        Assert.NotEmpty(decision.Wanted);
        Assert.All(decision.Wanted, reminder => Assert.False(reminder.Brief.Leave || reminder.Brief.LeaveBy is not null || reminder.Brief.Jobs.Count > 0));
    }

    [Fact]
    public void Decide_EvacuationMessageRunsOut_HoldsOnForADay()
    {
        var desk = new KeptDesk(Book);
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
        var decision = new KeptDesk(Book).At(ledger, Alerts.At(0.2));
        Assert.Equal(Alerts.At(6), decision.Plan!.WorkStops[WorkClass.Ground].Earliest);
        Assert.Equal(Alerts.At(4), decision.Plan.WorkStops[WorkClass.Sheet].Earliest);
    }

    [Fact]
    public void Decide_LeaveByAheadThenNow_IsToldOnceEach()
    {
        var desk = new KeptDesk(Book);
        var ledger = Alerts.Ledger(new LeaveByNote("plot", "ada", Morning, Alerts.At(4)));
        var ahead = desk.At(ledger, Morning).Wanted.Single(reminder => reminder.Key.Reason == ReminderReason.Leave && reminder.To.Id == "ada");
        var now = Assert.Single(desk.At(ledger, Alerts.At(4)).Wanted, reminder => reminder.To.Id == "ada");
        Assert.Equal(ReminderReason.Leave, now.Key.Reason);
        Assert.NotEqual(ahead.Key, now.Key);
        Assert.Equal(StageCause.LeaveByNote, now.Brief.Reason.Cause);
    }

    /// <summary>Nobody official ordered it, whatever warning stands beside the note.</summary>
    [Fact]
    public void Decide_LeaveByNoteBesideAWarning_IsNoOfficialOrder()
    {
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new LeaveByNote("plot", "ada", Morning, Alerts.At(4)));
        var decision = new KeptDesk(Book).At(ledger, Morning);
        Assert.Equal((StageCause.LeaveByNote, "leave-by note by ada"), (decision.Standing.Stage.Reason.Cause, decision.Standing.Stage.Reason.Source));
        Assert.All(decision.Wanted.Where(reminder => reminder.Key.Reason == ReminderReason.Leave), reminder => Assert.Equal(StageCause.LeaveByNote, reminder.Brief.Reason.Cause));
    }

    /// <summary>Only warnings, no forecast: three hours after the last of them, and never before.</summary>
    [Fact]
    public void Decide_WarningsAloneCancelled_LooksThreeHoursLater()
    {
        var desk = new KeptDesk(Book);
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
        var decision = new KeptDesk(Book).At(Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40))), Morning);
        Assert.All(decision.Wanted, reminder => Assert.True(reminder.Brief.NextBy <= decision.Plan!.WorkStops[WorkClass.Ground].Earliest));
    }

    [Fact]
    public void Decide_AllClearNote_NeverEndsAnOfficialAlert()
    {
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)), new AllClearNote("plot", "ada", Alerts.At(1)));
        Assert.Equal(Stage.MainWork, new KeptDesk(Book).At(ledger, Alerts.At(2)).Standing.Stage.Stage);
    }

    [Fact]
    public void Decide_ForecastGoesSilent_TellsSoAndNeverFalls()
    {
        var desk = new KeptDesk(Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] });
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
        var desk = new KeptDesk(Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] });
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
        var desk = new KeptDesk(Book);
        var ledger = Alerts.Ledger(Alerts.Message("w", 0, Alerts.Info(expires: 40)));
        desk.At(ledger, Morning);
        desk.Jobs["tie"] = new("tie", JobProgress.Done, Morning, "ada");
        Assert.DoesNotContain(desk.At(ledger, Alerts.At(1)).Plan!.Jobs, job => job.Job.Id == "tie");
    }

    /// <summary>A tub of 90 kg, to be moved or else tied, for two of whom each lifts 25 kg.</summary>
    private static GardenBook HeavyTub(double liftKg)
    {
        var bush = new ItemBuild { HeightM = 1.8, WidthM = 0.6, BaseM = 0.36, MassKg = 90, PotHeightM = 0.38, Drag = 0.5, Surface = Surface.Paving, Standing = Standing.Free };
        var tub = new Item(
            "tub", "Tub", "pot", "bed", 1, 100, [],
            [
                Gardens.Job("tub/move", 20, WorkClass.Carry, people: 2) with { ItemId = "tub", Kind = JobKind.Move },
                Gardens.Job("tub/tie", 20) with { ItemId = "tub" },
            ]) { Shape = ItemShape.Body, Build = bush, Written = bush };
        return Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)], Items = [tub], People = [.. Book.People.Select(person => person with { LiftKg = liftKg })] };
    }

    [Fact]
    public void Decide_MoveThatPeopleCanLift_LeavesTheTie()
    {
        var plan = new KeptDesk(HeavyTub(liftKg: 80)).At(Alerts.Ledger(SampleStorms.Ian16), SampleStorms.Ian16.IssuedAt).Plan!;
        Assert.Equal(["tub/move"], plan.Jobs.Select(job => job.Job.Id));
        Assert.Equal(LeftCause.OutOfWind, Assert.Single(plan.BetterLeft).Why.Cause);
    }

    /// <summary>What nobody can lift stays in the wind, so that the tie is worth its while.</summary>
    [Fact]
    public void Decide_MoveThatNobodyCanLift_PlansTheTie()
    {
        var plan = new KeptDesk(HeavyTub(liftKg: 25)).At(Alerts.Ledger(SampleStorms.Ian16), SampleStorms.Ian16.IssuedAt).Plan!;
        Assert.Equal(["tub/tie"], plan.Jobs.Select(job => job.Job.Id));
        Assert.Equal(LeftCause.TooHeavy, Assert.Single(plan.LeftOut).Why.Cause);
        Assert.Empty(plan.BetterLeft);
    }

    [Fact]
    public void Decide_MoveAnsweredCannot_PlansTheTie()
    {
        var desk = new KeptDesk(HeavyTub(liftKg: 80));
        var ledger = Alerts.Ledger(SampleStorms.Ian16);
        desk.At(ledger, SampleStorms.Ian16.IssuedAt);
        var later = SampleStorms.Ian16.IssuedAt + Duration.FromMinutes(10);
        desk.Jobs["tub/move"] = new("tub/move", JobProgress.Cannot, later, "ada");
        Assert.Equal(["tub/tie"], desk.At(ledger, later).Plan!.Jobs.Select(job => job.Job.Id));
    }

    /// <summary>Nothing of the last storm, neither its stop time nor its done jobs, may reach into the next.</summary>
    [Fact]
    public void Decide_AnotherStormAfterTheRecheck_BeginsAfresh()
    {
        var book = Book with { Sites = [Alerts.SiteAt(SampleStorms.FortMyers)] };
        var desk = new KeptDesk(book);
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
}
