using StormClock.Core.Garden;
using StormClock.Service.Books.Kinds;

namespace StormClock.Service.Books;

/// <summary>The kinds of things a garden book knows, in the trade's words (trade.md 9), with what is typical of each.</summary>
internal static class ItemKinds
{
    public static IReadOnlyDictionary<string, ItemKind> All => Catalogue.Own.Kinds;
}
