using StormClock.Core.Garden;
using StormClock.Service.Books.Kinds;

namespace StormClock.Service.Books;

/// <summary>The crops that a garden book knows, with how they bear to be picked early (trade.md 3.1).</summary>
internal static class Crops
{
    public static IReadOnlyDictionary<string, Crop> All => Catalogue.Own.Crops;
}
