using System.Runtime.CompilerServices;
using System.Text.Json;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Service.Store;

namespace StormClock.Service.Desk;

/// <summary>The plan in force as text for the store, and back: people go on by the plan they were told of, whatever befalls the box.</summary>
internal static class KeptPlanJson
{
    private static readonly ConditionalWeakTable<GardenBook, string> Marks = [];

    public static string Write(KeptPlan kept)
    {
        var occasion = kept.Occasion;
        return JsonSerializer.Serialize(
            new Text(kept.Plan, MarkOf(occasion.Book), occasion.Standing, occasion.States, occasion.StopTold, occasion.ForWind), StandingJson.Options);
    }

    /// <summary>Null when it was made for another book, or kept by another version: then a plan is made anew.</summary>
    public static KeptPlan? Read(string json, GardenBook book)
    {
        try
        {
            return JsonSerializer.Deserialize<Text>(json, StandingJson.Options) is { } text && text.Book == MarkOf(book)
                ? new(text.Plan, new(book, text.Standing, text.States, text.StopTold, text.ForWind))
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Names the contents of a book, which is read anew after a restart.</summary>
    private static string MarkOf(GardenBook book) => Marks.GetValue(book, read => Fingerprint.Of(JsonSerializer.Serialize(read, StandingJson.Options)));

    private sealed record Text(GardenPlan Plan, string Book, string Standing, IReadOnlyDictionary<string, JobState> States, Instant? StopTold, bool ForWind);
}
