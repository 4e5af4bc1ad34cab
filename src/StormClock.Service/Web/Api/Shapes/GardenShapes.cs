using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api.Shapes;

/// <summary>The gardens that the caller may look into.</summary>
/// <param name="Gardens">In the order of the installation.</param>
internal sealed record ApiGardens(IReadOnlyList<ApiGarden> Gardens);

/// <summary>One garden in a list.</summary>
/// <param name="Id">Stands in the addresses.</param>
/// <param name="Name">As its book has it.</param>
/// <param name="Stage">Null until the first look at the forecast after a start has ended: then nothing is known.</param>
/// <param name="Leave">An order to leave, or a leave-by time, holds: it outranks all work.</param>
internal sealed record ApiGarden(string Id, string Name, Stage? Stage, bool Leave);

/// <summary>How a garden stands. No stage, and no time, says that it is safe; official orders come before everything.</summary>
/// <param name="Garden">Its id.</param>
/// <param name="Name">As its book has it.</param>
/// <param name="Now">When this was told.</param>
/// <param name="Zone">Time zone of the garden, by its name in the tz database.</param>
/// <param name="Stage">How far the garden has got with a storm.</param>
/// <param name="Since">When this stage began.</param>
/// <param name="Reason">Why it holds.</param>
/// <param name="Episode">Names the spell of hazard; null while nothing is due.</param>
/// <param name="StoodDown">When the forecast turned away; null otherwise.</param>
/// <param name="Leave">An order to leave, or a leave-by time, holds: it outranks all work.</param>
/// <param name="LeaveBy">When everybody must have left; null where no time was named.</param>
/// <param name="WorkIsOver">Nobody works outside any more: the garden is closed, or people must leave now.</param>
/// <param name="WorkStops">When each class of work stops (sheet, ladder, saw, carry, ground); null while nothing is planned.</param>
/// <param name="Indoors">Who has said "I am in"; empty while the garden is not closed.</param>
/// <param name="Sources">Where the forecast comes from. A silent source is no good news.</param>
/// <param name="Cautions">Sentences to show with all of this, in the caller's language.</param>
internal sealed record ApiNow(
    string Garden,
    string Name,
    Instant Now,
    string Zone,
    Stage Stage,
    Instant Since,
    ApiReason Reason,
    string? Episode,
    Instant? StoodDown,
    bool Leave,
    Instant? LeaveBy,
    bool WorkIsOver,
    IReadOnlyDictionary<string, ApiStop>? WorkStops,
    IReadOnlyList<ApiIndoors> Indoors,
    IReadOnlyList<ApiSource> Sources,
    IReadOnlyList<string> Cautions)
{
    public static ApiNow Of(GardenVisit visit, IReadOnlyList<(Person Person, Instant? Since)> indoors, IEnumerable<FeedNow> sources) => new(
        visit.Book.Id,
        visit.Book.Name,
        visit.Now,
        visit.Book.Zone.Id,
        visit.Stage.Stage,
        visit.Stage.Since,
        ApiReason.Of(visit),
        visit.Stage.EpisodeId,
        visit.Stage.StoodDown,
        visit.Leave,
        visit.LeaveBy,
        visit.WorkIsOver,
        visit.Decision?.Plan is { } plan && !visit.WorkIsOver ? plan.WorkStops.ToDictionary(stop => ApiTokens.Of(stop.Key), stop => new ApiStop(stop.Value.Earliest, stop.Value.Likely)) : null,
        [.. indoors.Select(known => new ApiIndoors(known.Person.Id, known.Person.Name, known.Since))],
        [.. sources.Select(source => new ApiSource(source.Name, source.LastContent, source.LastGood, source.Stale, source.Deaf))],
        ApiTokens.Sentences(visit.Stage.Stage == Stage.GardenClosed ? Core.Reminders.CautionsFor.Closed : [Core.Reminders.Caution.OfficialOrders], visit.Speech));
}

/// <summary>Why a stage holds.</summary>
/// <param name="Sentence">Stage and reason in one sentence, in the caller's language.</param>
/// <param name="Cause">Which number or word made it hold.</param>
/// <param name="Source">As a person would name it; empty where there is none.</param>
/// <param name="Issued">When the source spoke; null where there is none.</param>
/// <param name="Chance">0 to 1, where the cause is a chance.</param>
/// <param name="At">The time that counts: earliest reasonable arrival, onset or leave-by.</param>
internal sealed record ApiReason(string Sentence, StageCause Cause, string Source, Instant? Issued, double? Chance, Instant? At)
{
    public static ApiReason Of(GardenVisit visit)
    {
        var (stage, reason) = (visit.Stage.Stage, visit.Stage.Reason);
        return new(ReasonWords.Sentence(stage, reason, visit.Speech, visit.Times), reason.Cause, reason.Source, reason.Issued, reason.Chance, reason.At);
    }
}

/// <summary>When a class of work stops, given that the wind comes; both null when it (almost) never does.</summary>
/// <param name="Earliest">Earliest reasonable: sooner in one case of ten. Nothing of this class is planned after it.</param>
/// <param name="Likely">Most likely.</param>
internal sealed record ApiStop(Instant? Earliest, Instant? Likely);

/// <summary>Somebody of a closed garden.</summary>
/// <param name="Person">Id.</param>
/// <param name="Name">As the book has it.</param>
/// <param name="Since">When they said that they are in; null when nothing was heard: phone, do not go out.</param>
internal sealed record ApiIndoors(string Person, string Name, Instant? Since);

/// <summary>One source of forecasts.</summary>
/// <param name="Name">As the settings have it.</param>
/// <param name="LastContent">When its newest content was issued; null when it brought none.</param>
/// <param name="LastGood">When it last answered well; null when it never did.</param>
/// <param name="Stale">It answers, but with content older than its limit.</param>
/// <param name="Deaf">It has brought no good answer for longer than its pace allows.</param>
internal sealed record ApiSource(string Name, Instant? LastContent, Instant? LastGood, bool Stale, bool Deaf);
