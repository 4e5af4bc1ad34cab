namespace StormClock.Core.Stages;

/// <summary>Moves a garden along the ladder: up at once, down slowly, and through Recheck at the end (science.md 4.3).</summary>
public static class StageRules
{
    private static readonly Duration NoFallAfterRise = Duration.FromHours(6);

    /// <summary>How long Recheck is shown before the episode is closed: until a month after, when it is asked for the last time (convention).</summary>
    private static readonly Duration RecheckStands = Duration.FromDays(32);

    /// <summary>How long a stand down is shown and may still be told (convention).</summary>
    private static readonly Duration StandDownStands = Duration.FromHours(24);

    /// <param name="gardenId">Begins the id of a new episode.</param>
    public static StageStanding Next(string gardenId, StageStanding standing, StageSigns signs)
    {
        var (told, reason) = StageLadder.Read(signs);
        return standing.Stage switch
        {
            Stage.GardenClosed => Closed(standing, signs, told, reason),
            Stage.Recheck when told == Stage.NothingDue => After(standing, signs),
            Stage.Recheck => Begin(gardenId, signs, told, reason),
            Stage.NothingDue when told == Stage.NothingDue => Quiet(standing, signs, reason),
            Stage.NothingDue => Begin(gardenId, signs, told, reason),
            _ when told > standing.Stage => Rise(standing, signs, told, reason),
            _ when told < standing.Stage => Fall(standing, signs, told, reason),
            _ => standing with { Reason = reason, FallSeenIn = null },
        };
    }

    private static StageStanding Begin(string gardenId, StageSigns signs, Stage told, StageReason reason) =>
        new($"{gardenId}-{signs.Now:uuuuMMdd'T'HHmm}", told, reason, signs.Now, 1, signs.Now, null, null);

    private static StageStanding Rise(StageStanding standing, StageSigns signs, Stage told, StageReason reason) =>
        standing with
        {
            Stage = told,
            Reason = reason,
            Since = signs.Now,
            Changes = standing.Changes + 1,
            LastRise = signs.Now,
            FallSeenIn = null,
        };

    /// <summary>Closed stays closed until the official end, still air for 3 h, and light to look by; a lull is none of these.</summary>
    private static StageStanding Closed(StageStanding standing, StageSigns signs, Stage told, StageReason reason)
    {
        if (told == Stage.GardenClosed) return standing with { Reason = reason };
        if (standing.Reason.Cause is StageCause.Order or StageCause.LeaveByNote && told > Stage.NothingDue)
        {
            // Only an order or an hour to leave had closed it: with that gone the forecast speaks again.
            return standing with { Stage = told, Reason = reason, Since = signs.Now, Changes = standing.Changes + 1, LastRise = signs.Now };
        }

        return signs.WindOver && signs.Daylight
            ? standing with
            {
                Stage = Stage.Recheck,
                Reason = new(signs.OfficialEnd ? StageCause.OfficialEnd : StageCause.WindPassed, signs.Why.Forecast, signs.Why.ForecastIssued),
                Since = signs.Now,
                Changes = standing.Changes + 1,
            }
            : standing;
    }

    private static StageStanding After(StageStanding standing, StageSigns signs) =>
        signs.Now - standing.Since >= RecheckStands ? StageStanding.Calm(signs.Now) : standing;

    private static StageStanding Quiet(StageStanding standing, StageSigns signs, StageReason reason) =>
        standing.StoodDown is { } at && signs.Now - at < StandDownStands
            ? standing
            : StageStanding.Calm(standing.StoodDown is null ? standing.Since : signs.Now) with { Reason = reason };

    /// <summary>
    /// A fall needs the lower stage to hold with margin in two successive full advisories, or in one that is the last word;
    /// silence never lowers anything.
    /// </summary>
    private static StageStanding Fall(StageStanding standing, StageSigns signs, Stage told, StageReason reason)
    {
        var clear = StageLadder.ReadWorse(signs) < standing.Stage;
        var restless = signs.Now - standing.LastRise < NoFallAfterRise;
        if (!clear || signs.Advisory is null) return standing with { FallSeenIn = clear ? standing.FallSeenIn : null };

        var second = standing.FallSeenIn is { } first && first != signs.Advisory;
        if (restless || !(second || signs.LastWord)) return standing with { FallSeenIn = standing.FallSeenIn ?? signs.Advisory };
        var to = StageLadder.ReadWorse(signs);
        return to == Stage.NothingDue
            ? StandDown(standing, signs)
            : standing with { Stage = to, Reason = reason, Since = signs.Now, Changes = standing.Changes + 1, FallSeenIn = null };
    }

    private static StageStanding StandDown(StageStanding standing, StageSigns signs) =>
        standing with
        {
            Stage = Stage.NothingDue,
            Reason = new(StageCause.TurnedAway, signs.Why.Forecast, signs.Why.ForecastIssued, signs.Chance),
            Since = signs.Now,
            Changes = standing.Changes + 1,
            FallSeenIn = null,
            StoodDown = signs.Now,
        };
}
