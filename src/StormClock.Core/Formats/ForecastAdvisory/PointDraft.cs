using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.ForecastAdvisory;

/// <summary>One point while its lines are still being read. Each number may be told once.</summary>
internal sealed class PointDraft(Instant valid, GeoPoint? centre, CycloneNature nature, bool overLand)
{
    private readonly Dictionary<int, QuadrantRadii> radii = [];
    private double? windKt;
    private double? gustKt;

    public Instant Valid => valid;

    public bool TrySetWind(double wind, double? gust)
    {
        if (windKt is not null) return false;
        (windKt, gustKt) = (wind, gust);
        return true;
    }

    public bool TrySetRadii(int thresholdKt, QuadrantRadii reach) => radii.TryAdd(thresholdKt, reach);

    public void GoInland() => overLand = true;

    public CyclonePoint Finish() =>
        new(valid, centre, windKt, gustKt, RadiiOf(34), RadiiOf(50), RadiiOf(64), nature, overLand);

    private QuadrantRadii? RadiiOf(int thresholdKt) => radii.TryGetValue(thresholdKt, out var reach) ? reach : null;
}
