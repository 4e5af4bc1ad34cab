using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Messages;

/// <summary>An invented garden, storm and people; every kind of message it can get.</summary>
internal static class QuayEnd
{
    private static readonly DateTimeZone NewYork = DateTimeZoneProviders.Tzdb["America/New_York"];

    /// <summary>Monday 20 September 2027, 06:30 EDT.</summary>
    public static Instant Now { get; } = Instant.FromUtc(2027, 9, 20, 10, 30);

    public static AckKey Key { get; } = new("k1", Enumerable.Range(1, 32).Select(i => (byte)i).ToArray());

    public static LinkMaker Links { get; } = new(new Uri("https://garden.example"), Key);

    public static LinkMaker NoLinks { get; } = new(null, Key);

    public static LinkMaker Replies { get; } = new(null, Key, takesReplies: true);

    public static LinkMaker LinksAndReplies { get; } = new(new Uri("https://garden.example"), Key, takesReplies: true);

    public static Person Ada { get; } = new("ada", "Ada", "ada@garden.example", PersonRole.Gardener, [], [], 13, false);

    public static BriefJob Lemon { get; } = Job("lemon/weigh_down", JobKind.WeighDown, "potted lemon", 4, "Terrace", 40,
        ["Ada", "Bo"], [new("rope_8mm", 6.5, "m"), new("block", 8, "each")], Hours(2.5), Hours(9.9), WorkClass.Carry);

    public static BriefJob Beans { get; } = Job("beans/pick", JobKind.Pick, "runner beans", 1, "Terrace", 75,
        ["Ada"], [], Hours(4), Hours(10.5), WorkClass.Ground);

    public static BriefJob Pane { get; } = Job("frame/take_down", JobKind.TakeDown, "cold frame light", 6, "Ditch end", 30,
        ["Ada", "Bo"], [new("old_blanket", 2, "each")], Hours(7), Hours(9), WorkClass.Sheet) with { SiteName = "Allotment" };

    private static BriefJob Boat { get; } = Job("dinghy/tie", JobKind.Tie, "dinghy", 1, "Slip", 60, [], [], null, null, WorkClass.Ground) with
    {
        Why = new(LeftCause.TooFewPeople) { People = 2 },
        Fallback = "fill it with water where it lies",
    };

    private static StageReason Arrival { get; } =
        new(StageCause.Arrival, "ODETTE advisory 16", Now - Duration.FromMinutes(210), null, Hours(31.6));

    public static MessageBrief MainWork { get; } = new(
        ReminderReason.StageChanged, "Quay End", NewYork, UnitSystem.UsCustomary, Stage.MainWork, false, null, Arrival,
        Hours(31.6), Hours(39.9), [Lemon, Beans, Pane],
        [new Shortage("rope_8mm", 6.5, 2, 4.5, "m") { NeededAt = Hours(3.2) }, new Shortage("block", 8, 5, 3, "each")], [Boat], [],
        [Caution.OfficialOrders, Caution.Lifting, Caution.Sharp, Caution.Heat], Hours(11.6));

    /// <summary>Name of the golden file and the message.</summary>
    public static IReadOnlyDictionary<string, (MessageBrief Brief, LinkMaker Links)> Briefs { get; } =
        new Dictionary<string, (MessageBrief, LinkMaker)>
        {
            ["look-over"] = (MainWork with
            {
                Stage = Stage.LookOver, StopEarliest = null, StopLikely = null, Jobs = [], LeftOut = [],
                Reason = new(StageCause.Chance, "ODETTE advisory 9", Now - Duration.FromHours(3), 0.124),
                Cautions = [Caution.OfficialOrders], NextBy = Hours(24),
            }, Links),
            ["slow-work-far-off"] = (MainWork with
            {
                Stage = Stage.SlowWork, StopEarliest = Hours(80.2), StopLikely = Hours(97), Jobs = [Beans], Buy = [], LeftOut = [],
                Reason = new(StageCause.Alert, "Tropical Storm Watch", Now - Duration.FromHours(1), null, Hours(80.2)),
            }, Links),
            ["main-work"] = (MainWork, Links),
            ["main-work-no-links"] = (MainWork, NoLinks),
            ["main-work-replies"] = (MainWork, Replies),
            ["main-work-links-and-replies"] = (MainWork, LinksAndReplies),
            ["late-replies"] = (MainWork with { Why = ReminderReason.Late, Jobs = [Pane with { StartBy = Hours(-0.5) }], Buy = [], LeftOut = [] }, Replies),
            ["garden-closed-replies"] = (MainWork with
            {
                Stage = Stage.GardenClosed,
                Reason = new(StageCause.WorkStops, "ODETTE advisory 19", Now - Duration.FromHours(2), null, Now),
                Cautions = [Caution.OfficialOrders, Caution.Lull, Caution.Generator],
            }, Replies),
            ["main-work-leave-by"] = (MainWork with { Leave = true, LeaveBy = Hours(7.25), LeftOut = [] }, Links),
            ["last-round-leave-by-note"] = (MainWork with
            {
                Stage = Stage.LastRound, Leave = true, LeaveBy = Hours(7.25), StopEarliest = Hours(7.25), StopLikely = Hours(7.25),
                Reason = new(StageCause.LeaveByNote, "leave-by note by Ada", Now - Duration.FromMinutes(5), null, Hours(7.25)), LeftOut = [], Buy = [],
            }, Links),
            ["leave-by-note"] = (MainWork with
            {
                Why = ReminderReason.Leave, Leave = true, LeaveBy = Hours(7.25),
                Reason = new(StageCause.LeaveByNote, "leave-by note by Ada", Now - Duration.FromMinutes(5), null, Hours(7.25)), NextBy = Hours(12),
            }, Links),
            ["work-day-sooner-stops"] = (MainWork with
            {
                Why = ReminderReason.WorkDay, Jobs = [Lemon with { StoreName = "Boat shed", TakeCare = ["Lift it by the pot.", "One walks ahead."] }, Beans, Pane], SoonerStops = [new(WorkClass.Ladder, Hours(-0.5)), new(WorkClass.Sheet, Hours(20.2)), new(WorkClass.Carry, Hours(26))],
                Buy = [new Shortage("rope_8mm", 6.5, 2, 4.5, "m") { NeededAt = Hours(-0.1) }],
            }, Links),
            ["work-day-metric"] = (MainWork with { Why = ReminderReason.WorkDay, Units = UnitSystem.Metric }, Links),
            ["order-changed"] = (MainWork with
            {
                Why = ReminderReason.OrderChanged, Stage = Stage.LastRound,
                Jobs = [Pane with { StartBy = Hours(-0.5), Fallback = "lay the lights flat on the grass, weighed down" }, Lemon], Buy = [], LeftOut = [],
                Changed = [new(PlanNewsKind.StopsSooner, []), new(PlanNewsKind.StartSooner, [Pane, Lemon]), new(PlanNewsKind.NoLongerFit, [Boat])],
            }, Links),
            ["order-changed-no-work"] = (MainWork with
            {
                Why = ReminderReason.OrderChanged, Jobs = [], Buy = [], Changed = [new(PlanNewsKind.NoLongerFit, [Boat])],
            }, Links),
            ["leave"] = (MainWork with
            {
                Why = ReminderReason.Leave, Leave = true, LeaveBy = Hours(9.17),
                Reason = new(StageCause.Order, "the county's evacuation order", Now - Duration.FromMinutes(25), null, Hours(9.17)),
                Cautions = [Caution.OfficialOrders, Caution.Water], NextBy = Hours(12),
            }, Links),
            ["garden-closed"] = (MainWork with
            {
                Stage = Stage.GardenClosed,
                Reason = new(StageCause.WorkStops, "ODETTE advisory 19", Now - Duration.FromHours(2), null, Now),
                Cautions = [Caution.OfficialOrders, Caution.Lull, Caution.Generator],
            }, Links),
            ["shelter-order"] = (MainWork with
            {
                Why = ReminderReason.Leave,
                Reason = new(StageCause.Order, "the county's shelter order", Now - Duration.FromMinutes(25)),
                Cautions = [Caution.OfficialOrders, Caution.Lull],
            }, NoLinks),
            ["stand-down"] = (MainWork with
            {
                Why = ReminderReason.StandDown, Stage = Stage.NothingDue, StopEarliest = null, StopLikely = null,
                Reason = new(StageCause.TurnedAway, "ODETTE advisory 21", Now - Duration.FromHours(2)),
                Jobs = [After(Lemon, JobKind.Untie), After(Pane, JobKind.PutBack)], Buy = [], LeftOut = [],
                Cautions = [Caution.Lifting], NextBy = null,
            }, Links),
            ["recheck"] = (MainWork with
            {
                Why = ReminderReason.Recheck, Stage = Stage.Recheck, StopEarliest = null, StopLikely = null,
                Reason = new(StageCause.OfficialEnd, "ODETTE advisory 24", Now - Duration.FromHours(2)),
                Jobs =
                [
                    After(Pane, JobKind.Check),
                    After(Lemon, JobKind.Untie), After(Beans, JobKind.Rinse),
                ],
                Buy = [], LeftOut = [],
                Cautions = [Caution.Wires, Caution.Water, Caution.Saw, Caution.Tetanus, Caution.Heat, Caution.Generator, Caution.Trees],
                NextBy = Hours(36),
            }, Links),
            ["late"] = (MainWork with { Why = ReminderReason.Late, Jobs = [Pane with { StartBy = Hours(-0.5) }, Lemon with { StartBy = Hours(-2) }], Buy = [], LeftOut = [] }, Links),
            ["order-lifted"] = (MainWork with { Why = ReminderReason.OrderLifted, Jobs = [Lemon], Buy = [], LeftOut = [] }, Links),
            ["sources-silent"] = (MainWork with
            {
                Why = ReminderReason.FeedSilent, Jobs = [Lemon], Buy = [], LeftOut = [],
                Silences = [new("county alerts", Hours(-3), null), new("island text", Hours(-3), null)],
            }, Links),
            ["feed-heard"] = (MainWork with { Why = ReminderReason.FeedHeard, Jobs = [Lemon], Buy = [], LeftOut = [], Silences = [new("county alerts", Hours(-3), null)] }, Links),
            ["not-in"] = (MainWork with
            {
                Why = ReminderReason.NotIn, Stage = Stage.GardenClosed, Jobs = [], Buy = [], LeftOut = [], Cautions = [Caution.OfficialOrders, Caution.Lull],
                Reason = new(StageCause.WorkStops, "ODETTE advisory 19", Now - Duration.FromHours(2), null, Now),
            } with { ClosedSince = Hours(-1), In = [new("bo", "Bo", Hours(-0.75))], NotHeardOf = ["Cy", "Dee"] }, Links),
            ["listening"] = (MainWork with
            {
                Why = ReminderReason.Listening, Stage = Stage.NothingDue, StopEarliest = null, StopLikely = null, Jobs = [], Buy = [], LeftOut = [], Cautions = [],
                Reason = new(StageCause.None, "", null), NextBy = Hours(7 * 24),
            }, Links),
            ["feed-silent"] = (MainWork with { Why = ReminderReason.FeedSilent, Jobs = [Lemon], Buy = [], LeftOut = [] }, Links),
        };

    /// <summary>The same garden, as its owner would name things in Spanish; its reader has a clock of twelve hours.</summary>
    public static Reminder RemindInSpanish(MessageBrief brief)
    {
        var reminder = Remind(brief with
        {
            GardenName = "La Caleta",
            Jobs = [.. brief.Jobs.Select(InSpanish)],
            LeftOut = [.. brief.LeftOut.Select(InSpanish)],
            Buy = [.. brief.Buy.Select(buy => buy with { Material = SpanishName(buy.Material) })],
        });
        return reminder with { To = Ada with { Language = Language.Spanish, Clock = ClockForm.Hours12 } };
    }

    private static BriefJob InSpanish(BriefJob job) => job with
    {
        ItemName = SpanishName(job.ItemName),
        AreaName = SpanishName(job.AreaName),
        SiteName = SpanishName(job.SiteName),
        PeopleNames = [.. job.PeopleNames.Select(SpanishName)],
        Bring = [.. job.Bring.Select(need => need with { Material = SpanishName(need.Material) })],
        Fallback = job.Fallback is null ? null : SpanishName(job.Fallback),
    };

    private static string SpanishName(string name) => name switch
    {
        "potted lemon" => "limonero en maceta",
        "runner beans" => "habichuelas",
        "cold frame light" => "tapa de vidrio",
        "dinghy" => "bote",
        "Terrace" => "Terraza",
        "Ditch end" => "Zanja",
        "Home" => "Casa",
        "Allotment" => "Huerto",
        "Slip" => "Rampa",
        "Bo" => "Inés",
        "old_blanket" => "manta vieja",
        "rope_8mm" => "cuerda_8mm",
        "block" => "bloque",
        "fill it with water where it lies" => "llénelo de agua donde está",
        "lay the lights flat on the grass, weighed down" => "acueste las tapas en la hierba con peso encima",
        _ => name,
    };

    public static Reminder Remind(MessageBrief brief) => new(
        new ReminderKey("quay-end", "e1", "ada", brief.Why, "MainWork-1", "email"), Ada, Now, Hours(6), false, brief);

    public static Instant Hours(double after) => Now + Duration.FromHours(after);

    private static BriefJob Job(
        string token, JobKind kind, string item, int count, string area, int minutes, string[] people,
        MaterialNeed[] bring, Instant? start, Instant? startBy, WorkClass work) =>
        new(token, kind, item, count, area, "Home", minutes, people, bring, start, startBy, work);

    private static BriefJob After(BriefJob job, JobKind kind) => job with
    {
        Kind = kind, Token = $"{job.Token}/after", Start = null, StartBy = null, Bring = [], Minutes = 15,
    };
}
