using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store;

/// <summary>The small functions over each collection.</summary>
public sealed class CollectionTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly StormStore store;

    public CollectionTests() => store = StormStore.Open(folder.Path);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Fact]
    public async Task Advisories_HeardTwice_FirstHearingStands()
    {
        var first = Heard("a1", "body", 0);

        Assert.True(await store.WriteAsync(tx => Advisories.Add(tx, first), Cancellation));
        Assert.False(await store.WriteAsync(tx => Advisories.Add(tx, Heard("a1", "body", 5)), Cancellation));

        Assert.Equal(first.HeardAt, Assert.Single(store.Read(Advisories.All)).HeardAt);
    }

    [Fact]
    public async Task Advisories_SameIdOtherBytes_BothAreKeptInOrderOfHearing()
    {
        await store.WriteAsync(tx => Advisories.Add(tx, Heard("a1", "second", 9)), Cancellation);
        await store.WriteAsync(tx => Advisories.Add(tx, Heard("a1", "first", 1)), Cancellation);

        Assert.Equal(["first", "second"], store.Read(Advisories.All).Select(heard => System.Text.Encoding.UTF8.GetString(heard.Raw)));
    }

    [Fact]
    public async Task Advisories_ForgetHeardBefore_DropsOnlyOlder()
    {
        foreach (var minute in new[] { 0, 10, 20 }) await store.WriteAsync(tx => Advisories.Add(tx, Heard($"a{minute}", "body", minute)), Cancellation);

        Assert.Equal(1, await store.WriteAsync(tx => Advisories.ForgetHeardBefore(tx, Entries.Start + Duration.FromMinutes(10)), Cancellation));

        Assert.Equal(["a10", "a20"], store.Read(Advisories.All).Select(heard => heard.Id));
    }

    [Fact]
    public async Task Advisory_OfTwoMegabytes_IsKeptWhole()
    {
        var raw = new byte[2_000_000];
        new Random(3).NextBytes(raw);

        await store.WriteAsync(tx => Advisories.Add(tx, new HeardAdvisory("big", raw, "cap", Entries.Start, Entries.Start, "feed")), Cancellation);

        Assert.Equal(raw, Assert.Single(store.Read(Advisories.All)).Raw);
    }

    [Fact]
    public async Task Standing_SavedOnWhatWasRead_CountsUp()
    {
        Assert.Null(store.Read(reader => Standings.Find(reader, "hollow")));
        Assert.True(await store.WriteAsync(tx => Standings.TrySave(tx, "hollow", "{}", 0), Cancellation));
        Assert.True(await store.WriteAsync(tx => Standings.TrySave(tx, "hollow", """{"a":1}""", 1), Cancellation));

        Assert.Equal(new StandingText("hollow", """{"a":1}""", 2), store.Read(reader => Standings.Find(reader, "hollow")));
    }

    [Fact]
    public async Task Standing_SavedByAnotherMeanwhile_IsRefusedAndUnchanged()
    {
        await store.WriteAsync(tx => Standings.TrySave(tx, "hollow", "theirs", 0), Cancellation);

        Assert.False(await store.WriteAsync(tx => Standings.TrySave(tx, "hollow", "ours", 0), Cancellation));

        Assert.Equal("theirs", store.Read(reader => Standings.Find(reader, "hollow"))!.Json);
    }

    [Fact]
    public async Task JobStates_OfEpisode_ShowsLastWordPerJobAndNoOtherEpisode()
    {
        await store.WriteAsync(
            tx =>
            {
                JobStates.Put(tx, "hollow", "e1", new JobState("b2", JobProgress.Later, Entries.Start, "ada"));
                JobStates.Put(tx, "hollow", "e1", new JobState("b1", JobProgress.Started, Entries.Start, "ada"));
                JobStates.Put(tx, "hollow", "e1", new JobState("b1", JobProgress.Done, Entries.Start + Duration.FromHours(1), "ben", CannotWhy.NoTime));
                JobStates.Put(tx, "hollow", "e2", new JobState("b1", JobProgress.Cannot, Entries.Start, "ada"));
                JobStates.Put(tx, "hollowe", "1", new JobState("b9", JobProgress.Cannot, Entries.Start, "ada"));
            },
            Cancellation);

        Assert.Equal(
            [new JobState("b1", JobProgress.Done, Entries.Start + Duration.FromHours(1), "ben", CannotWhy.NoTime), new JobState("b2", JobProgress.Later, Entries.Start, "ada")],
            store.Read(reader => JobStates.OfEpisode(reader, "hollow", "e1")));
    }

    [Fact]
    public async Task JobStates_IdsLongerThanAnIndexKey_AreKept()
    {
        var id = new string('j', 5000);

        await store.WriteAsync(tx => JobStates.Put(tx, id, id, new JobState(id, JobProgress.Done, Entries.Start, "ada")), Cancellation);

        Assert.Equal(id, Assert.Single(store.Read(reader => JobStates.OfEpisode(reader, id, id))).JobId);
    }

    [Fact]
    public async Task Presses_SameAnswerTwice_CountsOnce()
    {
        Assert.True(await store.WriteAsync(tx => Presses.Add(tx, new Press("t1", "Done", Entries.Start, "ada")), Cancellation));
        Assert.False(await store.WriteAsync(tx => Presses.Add(tx, new Press("t1", "Done", Entries.Start + Duration.FromHours(1), "ada")), Cancellation));
        Assert.True(await store.WriteAsync(tx => Presses.Add(tx, new Press("t1", "Cannot", Entries.Start + Duration.FromHours(2), "ada")), Cancellation));
        Assert.True(await store.WriteAsync(tx => Presses.Add(tx, new Press("t2", "Done", Entries.Start, "ada")), Cancellation));

        var pressed = store.Read(reader => Presses.OfToken(reader, "t1"));
        Assert.Equal(["Done", "Cannot"], pressed.Select(press => press.Answer));
        Assert.Equal(Entries.Start, pressed[0].At);
    }

    [Fact]
    public async Task InstallationId_AskedTwice_IsMadeOnce()
    {
        var first = await store.WriteAsync(Meta.InstallationId, Cancellation);

        Assert.Equal(32, first.Length);
        Assert.Equal(first, await store.WriteAsync(Meta.InstallationId, Cancellation));
    }

    [Fact]
    public async Task Outbox_SameKeyUnderAnotherId_IsRefusedByTheDatabase()
    {
        await store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make("once")), Cancellation);

        await Assert.ThrowsAsync<LiteDB.LiteException>(
            () => store.WriteAsync(tx => OutboxTable.Insert(tx, Entries.Make("once") with { Id = "another" }), Cancellation));

        Assert.Single(store.Read(reader => OutboxTable.OfGarden(reader, "hollow")));
    }

    [Fact]
    public async Task Outbox_Due_UrgentFirstThenMomentAndNothingEarly()
    {
        var hour = Duration.FromHours(1);
        OutboxEntry[] entries =
        [
            Entries.Make("late", Entries.Start + hour), Entries.Make("early"), Entries.Make("urgent", Entries.Start + hour, urgent: true),
            Entries.Make("future", Entries.Start + (hour * 2)), Entries.Make("backing off") with { NextTry = Entries.Start + (hour * 2) },
            Entries.Make("sent") with { State = OutboxState.Sent },
            Entries.Make("passed while backing off", useful: Duration.FromMinutes(50)) with { NextTry = Entries.Start + (hour * 3) },
        ];
        await store.WriteAsync(tx => Array.ForEach(entries, entry => OutboxTable.Insert(tx, entry)), Cancellation);

        var due = store.Read(reader => OutboxTable.Due(reader, Entries.Start + hour)).Select(entry => entry.Message.Text[8..]);

        Assert.Equal("urgent", due.First());
        Assert.Equal("late", due.Last());
        Assert.Equal(["early", "late", "passed while backing off", "urgent"], due.Order(StringComparer.Ordinal));
        Assert.Equal(Entries.Start, store.Read(OutboxTable.NextDue));
    }

    /// <summary>What may still change comes whole; of what is final the key, and when it was sent; nothing of another garden.</summary>
    [Fact]
    public async Task Outbox_Stock_IsTheGardensEntriesByWhatMayChange()
    {
        var sent = Entries.Start + Duration.FromMinutes(3);
        OutboxEntry[] entries =
        [
            Entries.Make("waiting"), Entries.Make("claimed") with { State = OutboxState.Claimed }, Entries.Make("expired") with { State = OutboxState.Expired, Settled = sent },
            Entries.Make("withdrawn") with { State = OutboxState.Withdrawn, Settled = sent }, Entries.Make("sent") with { State = OutboxState.Sent, Settled = sent },
            Entries.Make("refused") with { State = OutboxState.Refused, Settled = sent }, Entries.Make("sent", garden: "ridge") with { State = OutboxState.Sent, Settled = sent },
        ];
        await store.WriteAsync(tx => Array.ForEach(entries, entry => OutboxTable.Insert(tx, entry)), Cancellation);

        var stock = store.Read(reader => OutboxTable.StockOf(reader, "hollow"));
        var all = store.Read(reader => OutboxTable.OfGarden(reader, "hollow"));

        Assert.Equal(all.Where(entry => !OutboxStock.IsFinal(entry.State)).Select(entry => (entry.Id, entry.Message)), stock.Open.Select(entry => (entry.Id, entry.Message)));
        Assert.Equal(4, stock.Open.Count);
        Assert.Equal(new Dictionary<string, Instant?> { [entries[4].Key] = sent, [entries[5].Key] = null }, stock.Final);
        Assert.Equal([entries[4].Key], stock.SentAt.Keys);
    }

    [Fact]
    public async Task Outbox_ForgetSettledBefore_LeavesUnsettledAndNewer()
    {
        var day = Duration.FromDays(1);
        OutboxEntry[] entries =
        [
            Entries.Make("old sent") with { State = OutboxState.Sent, Settled = Entries.Start },
            Entries.Make("new sent") with { State = OutboxState.Sent, Settled = Entries.Start + (day * 2) },
            Entries.Make("waiting"),
        ];
        await store.WriteAsync(tx => Array.ForEach(entries, entry => OutboxTable.Insert(tx, entry)), Cancellation);

        Assert.Equal(1, await store.WriteAsync(tx => OutboxTable.ForgetSettledBefore(tx, Entries.Start + day), Cancellation));

        Assert.Equal(["Text of new sent", "Text of waiting"], store.Read(reader => OutboxTable.OfGarden(reader, "hollow")).Select(entry => entry.Message.Text).Order(StringComparer.Ordinal));
        Assert.Null(store.Read(reader => OutboxTable.FindByKey(reader, entries[0].Key)));
    }

    [Fact]
    public async Task Outbox_UpdateOfNothing_IsABug() =>
        await Assert.ThrowsAsync<InvalidOperationException>(() => store.WriteAsync(tx => OutboxTable.Update(tx, Entries.Make("missing")), Cancellation));

    private static HeardAdvisory Heard(string id, string body, int minute) => new(
        id, System.Text.Encoding.UTF8.GetBytes(body), "cap", Entries.Start, Entries.Start + Duration.FromMinutes(minute), "county feed");
}
