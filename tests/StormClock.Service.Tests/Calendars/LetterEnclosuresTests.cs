using System.Text;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Calendars;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Calendars;

/// <summary>Which letter carries what: the gardener is <c>gardener</c>, the helper works with her in the invented plan.</summary>
public class LetterEnclosuresTests
{
    private const string Gardener = "gardener";

    private static readonly string Helper = PlannedCalendars.Book.People.First(person => person.Role != PersonRole.Gardener).Id;

    private readonly List<JournalEntry> said = [];

    /// <summary>Reason, whether the letter shows jobs, then: calendar and sheet of the gardener, calendar and sheet of a helper.</summary>
    public static TheoryData<ReminderReason, bool, bool, bool, bool, bool> Letters => new()
    {
        { ReminderReason.StageChanged, true, true, true, true, false },
        { ReminderReason.WorkDay, true, true, true, true, false },
        { ReminderReason.OrderChanged, true, true, true, true, false },
        { ReminderReason.StageChanged, false, false, false, false, false },
        { ReminderReason.OrderChanged, false, false, false, false, false },
        { ReminderReason.Leave, false, false, false, false, false },
        { ReminderReason.StandDown, true, false, false, false, false },
        { ReminderReason.Recheck, true, false, false, false, false },
        { ReminderReason.FeedSilent, true, false, false, false, false },
    };

    [Theory, MemberData(nameof(Letters))]
    public void For_ByReason_CarriesThese(ReminderReason reason, bool jobs, bool calendar, bool sheet, bool helpersCalendar, bool helpersSheet)
    {
        Assert.Equal(Names(calendar, sheet), For(Letter(reason, Gardener, jobs)).Select(part => part.FileName));
        Assert.Equal(Names(helpersCalendar, helpersSheet), For(Letter(reason, Helper, jobs)).Select(part => part.FileName));
        Assert.Empty(said);
    }

    [Fact]
    public void For_AnotherChannel_CarriesNothing() =>
        Assert.Empty(For(Letter(ReminderReason.StageChanged, Gardener, jobs: true) with { Channel = "push" }));

    [Fact]
    public void Calendar_HasTheJobsOfItsReaderAlone()
    {
        foreach (var person in new[] { Gardener, Helper })
        {
            var mine = PlannedCalendars.First.Of(person);
            Assert.Equal(mine.Select(told => told.Uid).Order(), Calendar(For(Letter(ReminderReason.StageChanged, person, jobs: true))).Events.Select(told => told.Uid).Order());
        }
    }

    [Fact]
    public void Calendar_NamesNobody()
    {
        var text = Encoding.UTF8.GetString(For(Letter(ReminderReason.StageChanged, Gardener, jobs: true))[0].Bytes.Span);
        Assert.All(PlannedCalendars.Book.People, person => Assert.DoesNotContain(person.Name, text, StringComparison.Ordinal));
    }

    /// <summary>What no letter has told needs no taking back; what one has told is taken back by whichever letter comes next.</summary>
    [Theory]
    [InlineData(ReminderReason.StageChanged)]
    [InlineData(ReminderReason.Leave)]
    [InlineData(ReminderReason.StandDown)]
    [InlineData(ReminderReason.Recheck)]
    public void Calendar_ToldAndNoLongerPlanned_IsTakenBack(ReminderReason reason)
    {
        var told = new HashSet<string>();
        For(Letter(ReminderReason.StageChanged, Gardener, jobs: true), told: told);
        var letter = Letter(reason, Gardener, jobs: false);
        var closed = PlannedCalendars.Decided(null, Stage.GardenClosed);

        Assert.Empty(For(letter, PlannedCalendars.Next(PlannedCalendars.First, closed)));
        var back = Calendar(For(letter, PlannedCalendars.Next(CalendarChanges.Tell(PlannedCalendars.First, told), closed)));
        Assert.Equal(told.Order(), back.Events.Select(entry => entry.Uid).Order());
        Assert.All(back.Events, entry => Assert.Equal(("CANCELLED", 1), (entry.Status, entry.Sequence)));
    }

    [Fact]
    public void Calendar_OverForADay_IsNotTakenBackAnyMore()
    {
        var old = PlannedCalendars.First with { Events = [.. PlannedCalendars.First.Events.Select(told => told with { TakenBack = true, Told = true, End = PlannedCalendars.Now - Duration.FromDays(1) })] };
        Assert.Empty(For(Letter(ReminderReason.Recheck, Gardener, jobs: false), old));
    }

    [Fact]
    public void Sheet_Fails_TheCalendarGoesAndTheKeeperIsTold()
    {
        var parts = For(Letter(ReminderReason.WorkDay, Gardener, jobs: true), press: (_, _, _, _) => throw new InvalidOperationException("no ink"));
        Assert.Equal(["garden-work.ics"], parts.Select(part => part.FileName));
        var trouble = Assert.Single(said);
        Assert.Equal("trouble", trouble.Kind);
        Assert.Contains("no ink", trouble.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void Sheet_TooLarge_IsLeftOut(int over, bool goes)
    {
        var parts = For(Letter(ReminderReason.WorkDay, Gardener, jobs: true), press: (_, _, _, _) => new byte[LetterEnclosures.LargestSheet + over]);
        Assert.Equal(Names(true, goes), parts.Select(part => part.FileName));
        Assert.Equal(goes ? 0 : 1, said.Count);
    }

    [Fact]
    public void Calendar_TooLarge_IsLeftOutAndTellsNothing()
    {
        var many = PlannedCalendars.First with
        {
            Events = [.. Enumerable.Range(0, 1000).Select(at => PlannedCalendars.First.Of(Gardener)[0] with { Uid = $"e-{at}@stormclock.invalid" })],
        };
        var told = new HashSet<string>();
        Assert.Equal(["storm-plan.pdf"], For(Letter(ReminderReason.WorkDay, Gardener, jobs: true), many, told: told).Select(part => part.FileName));
        Assert.Empty(told);
        Assert.Single(said);
    }

    private static string[] Names(bool calendar, bool sheet) => [.. calendar ? ["garden-work.ics"] : Array.Empty<string>(), .. sheet ? ["storm-plan.pdf"] : Array.Empty<string>()];

    private static CheckedCalendar Calendar(IReadOnlyList<Enclosure> parts) =>
        CheckedCalendar.Read(Assert.Single(parts, part => part.MediaType == "text/calendar; charset=utf-8; method=PUBLISH").Bytes.Span);

    private static OutboxEntry Letter(ReminderReason reason, string person, bool jobs) => Entries.Make("x") with
    {
        Reason = reason.ToString(), PersonId = person, JobIds = jobs ? [.. PlannedCalendars.Plan.Jobs.Select(job => job.Job.Id)] : [],
    };

    private IReadOnlyList<Enclosure> For(OutboxEntry letter, GardenCalendar? calendar = null, SheetPress? press = null, HashSet<string>? told = null)
    {
        var journal = new Journal();
        journal.Written += said.Add;
        return new LetterEnclosures(press ?? ((_, _, _, _) => [1, 2, 3]), journal).For(
            letter, PlannedCalendars.Book, PlannedCalendars.Decided(PlannedCalendars.Plan), calendar ?? PlannedCalendars.First, PlannedCalendars.Now, told ?? []);
    }
}
