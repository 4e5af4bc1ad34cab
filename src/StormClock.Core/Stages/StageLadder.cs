namespace StormClock.Core.Stages;

/// <summary>
/// The stage that the signs alone would give, without memory (science.md 4.3). The limits are conventions of this project
/// (mark C), to be tuned on outcomes.
/// </summary>
public static class StageLadder
{
    private const double LookOverChance = 0.10;
    private const double SlowWorkChance = 0.25;
    private const double MainWorkChance = 0.50;
    private static readonly Duration SlowWorkWithin = Duration.FromHours(72);
    private static readonly Duration MainWorkWithin = Duration.FromHours(36);
    private static readonly Duration LastRoundWithin = Duration.FromHours(12);
    private static readonly Duration StartByWithin = Duration.FromHours(12);

    /// <summary>The rung that holds, with its reason.</summary>
    public static (Stage Stage, StageReason Reason) Read(StageSigns signs) => Read(signs, Margin.None);

    /// <summary>
    /// The rung that would hold if the signs were worse by the margin that a fall must clear: 10 points of chance and 6 h of
    /// time. For the lowest limit the margin of chance is half the limit, or nothing could ever fall below it.
    /// </summary>
    public static Stage ReadWorse(StageSigns signs) => Read(signs, Margin.Fall).Stage;

    /// <summary>The higher of what wind, orders and alerts ask for and what rain alone does.</summary>
    private static (Stage Stage, StageReason Reason) Read(StageSigns signs, Margin margin)
    {
        var wind = OfWind(signs, margin);
        var rain = RainStage.Of(signs.Rain, margin.RainShare);
        return rain <= wind.Stage ? wind : (rain, new(StageCause.Rain, signs.Rain.Source, signs.Rain.Issued, At: signs.Rain.From) { RainMm = signs.Rain.DayMm });
    }

    private static (Stage Stage, StageReason Reason) OfWind(StageSigns signs, Margin margin)
    {
        var why = signs.Why;
        if (signs.LeaveBy <= signs.Now)
        {
            return (Stage.GardenClosed, why.ToLeave(signs.LeaveBy));
        }

        if (signs.Order != OfficialOrder.None)
        {
            return (Stage.GardenClosed, why.ToLeave(null));
        }

        var chanceHolds = Reaches(signs.Chance, LookOverChance, margin);
        var left = signs.Earliest - signs.Now - margin.Time;
        if (chanceHolds && (left <= Duration.Zero || signs.GroundStop - margin.Time <= signs.Now))
        {
            return (Stage.GardenClosed, Said(StageCause.WorkStops, LookOverChance, signs.GroundStop));
        }

        if (chanceHolds && left <= LastRoundWithin) return (Stage.LastRound, Said(StageCause.Arrival, LookOverChance, signs.Earliest));
        if (signs.LeaveBy is { } ahead)
        {
            var soon = ahead - signs.Now <= LastRoundWithin;
            return (soon ? Stage.LastRound : Stage.MainWork, why.ToLeave(ahead));
        }

        if (signs.Warned) return (Stage.MainWork, new(StageCause.Alert, why.Official!, why.OfficialIssued, signs.Chance, signs.Earliest));
        if (Reaches(signs.Chance, MainWorkChance, margin) && left <= SlowWorkWithin) return (Stage.MainWork, Said(StageCause.Chance, MainWorkChance, signs.Earliest));
        if (chanceHolds && left <= MainWorkWithin) return (Stage.MainWork, Said(StageCause.Arrival, LookOverChance, signs.Earliest));
        if (Reaches(signs.Chance, SlowWorkChance, margin) && signs.FirstMainStartBy - signs.Now <= StartByWithin)
        {
            return (Stage.MainWork, Said(StageCause.StartBy, SlowWorkChance, signs.FirstMainStartBy));
        }

        if (Reaches(signs.Chance, SlowWorkChance, margin)) return (Stage.SlowWork, Said(StageCause.Chance, SlowWorkChance, signs.Earliest));
        if (chanceHolds && left <= SlowWorkWithin) return (Stage.SlowWork, Said(StageCause.Arrival, LookOverChance, signs.Earliest));
        if (chanceHolds) return (Stage.LookOver, Said(StageCause.Chance, LookOverChance, signs.Earliest));
        if (signs.Unmatched) return (Stage.LookOver, new(StageCause.UnmatchedAlert, why.Official!, why.OfficialIssued));
        return (Stage.NothingDue, new(StageCause.None, why.Forecast, why.ForecastIssued, signs.Chance));

        // The official table is named where its larger chance decides; else the forecast with its own chance.
        StageReason Said(StageCause cause, double limit, Instant? at) => why.Larger switch
        {
            { } larger when !Reaches(larger.OwnChance, limit, margin) => new(cause, larger.Table, larger.Issued, signs.Chance, at),
            var larger => new(cause, why.Forecast, why.ForecastIssued, larger?.OwnChance ?? signs.Chance, at) { IsLocal = why.IsLocal },
        };
    }

    private static bool Reaches(double chance, double limit, Margin margin) =>
        chance > 0 && chance >= limit - Math.Min(margin.Chance, limit / 2);

    /// <summary>How much worse than told the signs are taken.</summary>
    /// <param name="RainShare">Of the limits of rain.</param>
    private sealed record Margin(double Chance, Duration Time, double RainShare)
    {
        public static readonly Margin None = new(0, Duration.Zero, 1);
        public static readonly Margin Fall = new(0.10, Duration.FromHours(6), 0.8);
    }
}
