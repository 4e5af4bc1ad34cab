using LiteDB;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Store;

/// <summary>An answer given on the page behind a link.</summary>
public sealed record Press(string TokenId, string Answer, Instant At, string By);

/// <summary>Which answers have been given, so that pressing twice does nothing twice.</summary>
public static class Presses
{
    /// <summary>False when this answer was given on this link before; the first time stands.</summary>
    public static bool Add(StoreTransaction transaction, Press press)
    {
        var collection = transaction.Collection(Schema.Pressed);
        if (collection.FindById(PressMapping.IdOf(press.TokenId, press.Answer)) is not null) return false;
        collection.Insert(PressMapping.ToBson(press));
        return true;
    }

    /// <summary>All answers given on one link, oldest first.</summary>
    public static IReadOnlyList<Press> OfToken(StoreReader reader, string tokenId) =>
        [.. reader.Collection(Schema.Pressed).Find(Query.EQ("tokenMark", PressMapping.TokenMarkOf(tokenId)))
            .Select(PressMapping.FromBson).OrderBy(press => press.At).ThenBy(press => press.Answer, StringComparer.Ordinal)];
}
