using LiteDB;

namespace StormClock.Service.Store.Mapping;

internal static class PressMapping
{
    public static string IdOf(string tokenId, string answer) => Fingerprint.Of(tokenId, answer);

    public static string TokenMarkOf(string tokenId) => Fingerprint.Of(tokenId);

    public static BsonDocument ToBson(Press press) => new()
    {
        ["_id"] = IdOf(press.TokenId, press.Answer),
        ["tokenMark"] = TokenMarkOf(press.TokenId),
        ["token"] = press.TokenId,
        ["answer"] = press.Answer,
        ["at"] = Bson.From(press.At),
        ["by"] = press.By,
    };

    public static Press FromBson(BsonDocument document) => new(
        document["token"].AsString, document["answer"].AsString, Bson.ToInstant(document["at"]), document["by"].AsString);
}
