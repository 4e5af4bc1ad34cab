using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Service.Books;

/// <summary>The wind at which work stops, where the gardener has limits of her own.</summary>
public sealed partial class GardenReader
{
    private static Dictionary<WorkClass, WorkLimit> Limits(YamlFields top)
    {
        var limits = new Dictionary<WorkClass, WorkLimit>(WorkLimit.Defaults);
        if (top.Map("limits", "limits", [.. Tokens.Classes.Keys], "{ladder: {sustained: 18 mph, gust: 24 mph}}") is not { } written) return limits;

        foreach (var (token, workClass) in Tokens.Classes)
        {
            if (written.Map(token, $"the {token} limit", GardenKeys.Limit, "{sustained: 18 mph, gust: 24 mph}") is { } limit)
                limits[workClass] = Limit(limit, WorkLimit.Defaults[workClass]);
        }

        return limits;
    }

    /// <summary>No limit may pass 34 kt sustained, where nobody works outside (product.md 2), or a gust of 50 kt (C).</summary>
    private static WorkLimit Limit(YamlFields fields, WorkLimit usual)
    {
        var limit = new WorkLimit(
            fields.Amount("sustained", QuantityKind.WindSpeed, 1, Wind.KtToMps(Wind.GaleKt), "sustained") ?? usual.SustainedMps,
            fields.Amount("gust", QuantityKind.WindSpeed, 1, Wind.KtToMps(50), "gust") ?? usual.GustMps);
        if (limit.GustMps < limit.SustainedMps) fields.Fault(fields.Has("gust") ? "gust" : "sustained", "leaves the gust limit below the sustained one; write both");
        return limit;
    }
}
