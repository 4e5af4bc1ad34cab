using StormClock.Core.Water;

namespace StormClock.Core.Stages;

/// <summary>The stage that rain alone would give (science.md 4.3; limits C). It is for work against water only.</summary>
public static class RainStage
{
    private const double LookOverMm = 50;
    private const double SlowWorkMm = 75;
    private const double MainWorkMm = 125;
    private const double MainWorkHourMm = 30;

    /// <param name="share">Of the limits: 1, or less to see whether it would hold with less rain.</param>
    public static Stage Of(RainOutlook rain, double share = 1) =>
        rain.DayMm >= share * MainWorkMm || rain.HourMm >= share * MainWorkHourMm ? Stage.MainWork
        : rain.DayMm >= share * SlowWorkMm ? Stage.SlowWork
        : rain.DayMm >= share * LookOverMm ? Stage.LookOver
        : Stage.NothingDue;
}
