using System.Globalization;
using LiteDB;

namespace StormClock.Service.Store;

/// <summary>The collections, their indexes and the version of their shape.</summary>
internal static class Schema
{
    public const int Version = 1;

    public const string Advisories = "advisories";
    public const string Standing = "standing";
    public const string JobStates = "jobStates";
    public const string Outbox = "outbox";
    public const string Enclosures = "enclosures";
    public const string Calendars = "calendars";
    public const string Plans = "plans";
    public const string Pressed = "pressed";
    public const string Indoors = "indoors";
    public const string Feeds = "feeds";
    public const string FeedEntries = "feedEntries";
    public const string Subscriptions = "subscriptions";
    public const string PhotoNotes = "photoNotes";
    public const string Replies = "replies";
    public const string Mailboxes = "mailboxes";
    public const string Visits = "visits";
    public const string WalkMarks = "walkMarks";
    public const string Outcomes = "outcomes";
    public const string Episodes = "episodes";
    public const string SignIns = "signIns";
    public const string ApiKeys = "apiKeys";
    public const string Meta = "meta";

    private const string VersionKey = "schemaVersion";

    /// <summary>Makes what is missing; throws <see cref="StoreTooNewException"/> rather than touch what a newer version wrote.</summary>
    public static void Ensure(LiteDatabase database)
    {
        var meta = database.GetCollection(Meta);
        var found = meta.FindById(VersionKey)?["value"].AsString;
        if (found is not null)
        {
            var version = int.Parse(found, CultureInfo.InvariantCulture);
            if (version > Version) throw new StoreTooNewException(version, Version);
        }

        // The engine would fold its log inside a commit, or even a read, and fail either when the disk has no room for that;
        // the store does it by itself between them.
        if (database.CheckpointSize != 0) database.CheckpointSize = 0;

        database.GetCollection(JobStates).EnsureIndex("episodeMark", "$.episodeMark");
        database.GetCollection(Indoors).EnsureIndex("episodeMark", "$.episodeMark");
        database.GetCollection(Pressed).EnsureIndex("tokenMark", "$.tokenMark");
        var subscriptions = database.GetCollection(Subscriptions);
        subscriptions.EnsureIndex("gardenMark", "$.gardenMark");
        subscriptions.EnsureIndex("endpointMark", "$.endpointMark");
        database.GetCollection(PhotoNotes).EnsureIndex("gardenMark", "$.gardenMark");
        database.GetCollection(Replies).EnsureIndex("toldMark", "$.toldMark");
        database.GetCollection(WalkMarks).EnsureIndex("gardenMark", "$.gardenMark");
        database.GetCollection(Outcomes).EnsureIndex("gardenMark", "$.gardenMark");
        database.GetCollection(Episodes).EnsureIndex("gardenMark", "$.gardenMark");
        var outbox = database.GetCollection(Outbox);
        outbox.EnsureIndex("keyMark", "$.keyMark", unique: true);
        outbox.EnsureIndex("state", "$.state");
        outbox.EnsureIndex("gardenMark", "$.gardenMark");

        if (found is null) meta.Insert(new BsonDocument { ["_id"] = VersionKey, ["value"] = Version.ToString(CultureInfo.InvariantCulture) });
    }
}
