using LiteDB;

namespace StormClock.Service.Store.Mapping;

internal static class StandingMapping
{
    public static string IdOf(string gardenId) => Fingerprint.Of(gardenId);

    public static BsonDocument ToBson(StandingText standing) => new()
    {
        ["_id"] = IdOf(standing.GardenId),
        ["garden"] = standing.GardenId,
        ["json"] = standing.Json,
        ["revision"] = standing.Revision,
    };

    public static StandingText FromBson(BsonDocument document) =>
        new(document["garden"].AsString, document["json"].AsString, document["revision"].AsInt64);
}
