using System.Security.Cryptography;
using LiteDB;

namespace StormClock.Service.Store.Mapping;

internal static class AdvisoryMapping
{
    /// <summary>Some senders use an id twice for different messages, so the bytes belong to the name.</summary>
    public static string IdOf(HeardAdvisory heard) => Fingerprint.Of(heard.Id, Convert.ToHexStringLower(SHA256.HashData(heard.Raw)));

    public static BsonDocument ToBson(HeardAdvisory heard) => new()
    {
        ["_id"] = IdOf(heard),
        ["id"] = heard.Id,
        ["raw"] = heard.Raw,
        ["format"] = heard.Format,
        ["issued"] = Bson.From(heard.Issued),
        ["heardAt"] = Bson.From(heard.HeardAt),
        ["source"] = heard.Source,
    };

    public static HeardAdvisory FromBson(BsonDocument document) => new(
        document["id"].AsString,
        document["raw"].AsBinary,
        document["format"].AsString,
        Bson.ToInstant(document["issued"]),
        Bson.ToInstant(document["heardAt"]),
        document["source"].AsString);
}
