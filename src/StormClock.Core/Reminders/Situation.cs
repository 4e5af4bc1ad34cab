using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;

namespace StormClock.Core.Reminders;

/// <summary>Everything that decides which messages are wanted for one garden at one instant.</summary>
/// <param name="Stage">The stage as just decided.</param>
/// <param name="Announced">The plan changes told so far, the newest included.</param>
/// <param name="Plan">Null while nothing is due and once the garden is closed.</param>
/// <param name="LeaveBy">A leave-by time that stands, past or to come.</param>
/// <param name="Order">An evacuation or shelter order that holds now.</param>
/// <param name="OrderId">Names the order or leave-by, for the key.</param>
/// <param name="OrderReason">Who ordered what.</param>
/// <param name="RecheckBy">When the recheck should have been asked; null when unknown.</param>
/// <param name="SilentSince">Issue time of the newest advisory when it is too old; null while the sources speak.</param>
/// <param name="After">Undo list of a stand down, or look-and-undo list of a recheck.</param>
/// <param name="SentAt">When each message was sent, by key.</param>
public sealed record Situation(
    GardenBook Book,
    StageStanding Stage,
    Announced Announced,
    GardenPlan? Plan,
    Instant? LeaveBy,
    OfficialOrder Order,
    string? OrderId,
    StageReason OrderReason,
    Instant? RecheckBy,
    Instant? SilentSince,
    IReadOnlyList<BriefJob> After,
    IReadOnlyDictionary<string, Instant> SentAt,
    Instant Now)
{
    /// <summary>Hours in which only urgent messages go out; null for none.</summary>
    public QuietHours? Quiet { get; init; }

    /// <summary>Last word on each job, by job id.</summary>
    public IReadOnlyDictionary<string, JobState> States { get; init; } = new Dictionary<string, JobState>();

    /// <summary>Since when each planned job has been late without an answer.</summary>
    public IReadOnlyDictionary<string, Instant> LateSince { get; init; } = new Dictionary<string, Instant>();

    /// <summary>When each person said "I am in" since the garden was closed, by person id.</summary>
    public IReadOnlyDictionary<string, Instant> In { get; init; } = new Dictionary<string, Instant>();

    /// <summary>When the wind was last expected to be over; null when that is not known.</summary>
    public Instant? UnsafeUntil { get; init; }

    /// <summary>Sources that cannot be heard, or could not until lately.</summary>
    public IReadOnlyList<SourceSilence> Silences { get; init; } = [];

    /// <summary>How each person is told.</summary>
    public Reach Reach { get; init; } = Reach.MailOnly;

    public bool OrderInForce => Order != OfficialOrder.None;

    /// <summary>People are to leave, now or by an hour; a call to shelter is the opposite.</summary>
    public bool Leave => Order == OfficialOrder.Evacuate || LeaveBy is not null;

    /// <summary>Nobody is to be told of work any more.</summary>
    public bool OrderNow => OrderInForce || LeaveBy <= Now;

    /// <summary>When ground work stops at the earliest.</summary>
    public Instant? StopEarliest => Plan?.WorkStops[WorkClass.Ground].Earliest;

    public Instant? StopLikely => Plan?.WorkStops[WorkClass.Ground].Likely;

    /// <summary>Whether a person hears of what concerns the whole garden: the gardener; everybody where there is none.</summary>
    public bool IsTold(Person person) =>
        person.Role == PersonRole.Gardener || Book.People.All(other => other.Role != PersonRole.Gardener);

    /// <summary>The messages that were sent to a person for a reason in this episode, by any channel.</summary>
    public IEnumerable<SentMessage> Sent(Person person, ReminderReason reason)
    {
        var begin = $"{Book.Id}|{Stage.EpisodeId}|{person.Id}|{reason}|";
        return SentAt.Where(sent => sent.Key.StartsWith(begin, StringComparison.Ordinal)).Select(sent => new SentMessage(sent.Key[begin.Length..sent.Key.LastIndexOf('|')], sent.Value));
    }
}

/// <param name="Occasion">As in its key.</param>
public sealed record SentMessage(string Occasion, Instant At);
