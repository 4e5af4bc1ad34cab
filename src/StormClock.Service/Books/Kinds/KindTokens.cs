using StormClock.Core.Garden;

namespace StormClock.Service.Books.Kinds;

/// <summary>How the words that only the catalogue uses are written: snake case of the names in code.</summary>
internal static class KindTokens
{
    public static IReadOnlyDictionary<string, ItemTraits> Traits { get; } = Of<ItemTraits>();

    public static IReadOnlyDictionary<string, ItemShape> Shapes { get; } = Of<ItemShape>();

    private static Dictionary<string, T> Of<T>()
        where T : struct, Enum => Enum.GetValues<T>().ToDictionary(Tokens.Of);
}
