namespace StormClock.Service.Pictures;

/// <summary>What the surfaces mean.</summary>
internal static class PictureKey
{
    public static IEnumerable<(Fill Fill, string Words)> Of(PictureModel model)
    {
        if (model.Bars.Count > 0) yield return (Fill.Ink, "a job");
        yield return (Fill.Paper, "daylight for all work");
        yield return (Fill.Pale, "light for ground work only");
        yield return (Fill.Night, "too dark");
        if (model.Ground?.Earliest is not null || model.Subject.LeaveBy is not null) yield return (Fill.Closed, "no garden work");
        if (model.Chance.Count > 0) yield return (Fill.Perhaps, "chance not known more closely");
    }
}
