namespace StormClock.Service.Pictures;

/// <summary>What the surfaces mean.</summary>
internal static class PictureKey
{
    public static IEnumerable<(Fill Fill, string Words)> Of(PictureModel model)
    {
        if (model.Bars.Count > 0) yield return (Fill.Ink, model.Speech.Say("picture.key.job"));
        yield return (Fill.Paper, model.Speech.Say("picture.key.daylight"));
        yield return (Fill.Pale, model.Speech.Say("picture.key.ground-light"));
        yield return (Fill.Night, model.Speech.Say("picture.key.dark"));
        if (model.Ground?.Earliest is not null || model.Subject.LeaveBy is not null) yield return (Fill.Closed, model.Speech.Say("picture.key.closed"));
        if (model.Chance.Count > 0) yield return (Fill.Perhaps, model.Speech.Say("picture.key.perhaps"));
    }
}
