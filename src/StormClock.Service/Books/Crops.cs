using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>The crops a garden book knows. A stand-in with two of them, replaced by the catalogue when that is merged.</summary>
internal static class Crops
{
    /// <summary>Whether they ripen off the plant and the tomato's keeping: trade.md 3.1, M. Keeping of citrus, and both gusts: C, ours.</summary>
    public static IReadOnlyDictionary<string, Crop> All { get; } = new Dictionary<string, Crop>
    {
        ["tomato"] = new("tomato", "tomatoes", true, 14, 20),
        ["citrus"] = new("citrus", "citrus", false, 21, 22),
    };
}
