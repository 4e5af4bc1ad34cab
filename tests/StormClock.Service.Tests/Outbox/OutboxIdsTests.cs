using StormClock.Core.Reminders;
using StormClock.Service.Outbox;

namespace StormClock.Service.Tests.Outbox;

public class OutboxIdsTests
{
    private static readonly ReminderKey Key = new("hollow", "2027-1", "ada", ReminderReason.StageChanged, "MainWork/1", "email");

    [Fact]
    public void For_SameKeyAndFolder_IsAlwaysTheSame()
    {
        var ids = OutboxIds.For(Key, "folder");

        Assert.Equal(ids, OutboxIds.For(Key with { }, "folder"));
        Assert.Equal($"{ids.EntryId}@stormclock.invalid", ids.MessageId);
        Assert.Matches("^[0-9a-f]{32}$", ids.EntryId);
        Assert.Matches("^[0-9a-f]{32}@stormclock\\.invalid$", ids.ThreadId);
        Assert.NotEqual(ids.MessageId, ids.ThreadId);
    }

    [Fact]
    public void For_AnyPartDiffering_IsAnotherMessage()
    {
        ReminderKey[] keys =
        [
            Key, Key with { GardenId = "h" }, Key with { EpisodeId = "2027-2" }, Key with { PersonId = "ben" },
            Key with { Reason = ReminderReason.Leave }, Key with { Occasion = "MainWork/2" }, Key with { Channel = "push" },
        ];

        Assert.Equal(keys.Length, keys.Select(key => OutboxIds.For(key, "folder").MessageId).Distinct().Count());
        Assert.NotEqual(OutboxIds.For(Key, "folder").MessageId, OutboxIds.For(Key, "other folder").MessageId);
    }

    [Fact]
    public void For_OneEpisodeOfOnePerson_IsOneThreadAndAnyOtherAnother()
    {
        var thread = OutboxIds.For(Key, "folder").ThreadId;

        Assert.Equal(thread, OutboxIds.For(Key with { Occasion = "x", Reason = ReminderReason.Recheck }, "folder").ThreadId);
        Assert.NotEqual(thread, OutboxIds.For(Key with { EpisodeId = "2027-2" }, "folder").ThreadId);
        Assert.NotEqual(thread, OutboxIds.For(Key with { PersonId = "ben" }, "folder").ThreadId);
    }
}
