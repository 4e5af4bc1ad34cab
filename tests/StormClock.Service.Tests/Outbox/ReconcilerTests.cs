using CsCheck;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Outbox;

public class ReconcilerTests
{
    private static readonly Instant Now = Entries.Start;
    private static readonly Duration Hour = Duration.FromHours(1);

    public static TheoryData<string, OutboxEntry?, OutboxEntry?, ReconcileReason?, OutboxState?> Table()
    {
        var waiting = Entries.Make("x");
        var tried = waiting with { Attempts = 1, NextTry = Now + Duration.FromMinutes(2), Detail = "451 later" };
        var past = Entries.Make("x", Now - (Hour * 8));
        var longer = waiting with { UsefulUntil = waiting.UsefulUntil + Hour };
        var reworded = waiting with { Message = waiting.Message with { Text = "other words" } };
        OutboxEntry In(OutboxState state) => waiting with { State = state, Settled = Now };
        return new()
        {
            { "nothing there, nothing wanted", null, null, null, null },
            { "first time", null, waiting, ReconcileReason.New, OutboxState.Waiting },
            { "first time, too late", null, past, ReconcileReason.NewButTooLate, OutboxState.Expired },
            { "there already", waiting, waiting, null, null },
            { "there already, made anew later", waiting, waiting with { Written = Now + Hour }, null, null },
            { "other words before any try", waiting, reworded, ReconcileReason.Rewritten, OutboxState.Waiting },
            { "other words after a try: same bytes again", tried, reworded, null, null },
            { "longer useful after a try", tried, longer, ReconcileReason.UsefulUntilMoved, OutboxState.Waiting },
            { "no longer wanted", waiting, null, ReconcileReason.NoLongerWanted, OutboxState.Withdrawn },
            { "no longer wanted after a try", tried, null, ReconcileReason.NoLongerWanted, OutboxState.Withdrawn },
            { "passed while waiting, still wanted", past, past, ReconcileReason.TimeOfUsePassed, OutboxState.Expired },
            { "passed while waiting, not wanted", past, null, ReconcileReason.TimeOfUsePassed, OutboxState.Expired },
            { "passed as it was, wanted for longer", past, waiting, ReconcileReason.Rewritten, OutboxState.Waiting },
            { "wanted shorter than now", waiting, past, ReconcileReason.TimeOfUsePassed, OutboxState.Expired },
            { "withdrawn, wanted again", In(OutboxState.Withdrawn), waiting, ReconcileReason.WantedAgain, OutboxState.Waiting },
            { "withdrawn, still not wanted", In(OutboxState.Withdrawn), null, null, null },
            { "expired, wanted again with time", In(OutboxState.Expired), waiting, ReconcileReason.WantedAgain, OutboxState.Waiting },
            { "expired, wanted without time", In(OutboxState.Expired), past, null, null },
            { "being sent, wanted", In(OutboxState.Claimed), reworded, null, null },
            { "being sent, not wanted", In(OutboxState.Claimed), null, null, null },
            { "sent, wanted", In(OutboxState.Sent), reworded, null, null },
            { "sent, not wanted", In(OutboxState.Sent), null, null, null },
            { "refused, wanted", In(OutboxState.Refused), longer, null, null },
        };
    }

    [Theory, MemberData(nameof(Table))]
    public void Decide_OneEntry_FollowsTheTable(string why, OutboxEntry? stored, OutboxEntry? wanted, ReconcileReason? reason, OutboxState? state)
    {
        var changes = Reconciler.Decide(wanted is null ? [] : [wanted], Stock(stored is null ? [] : [stored]), Now);

        Assert.True(changes.Count == (reason is null ? 0 : 1), why);
        Assert.Equal(reason, changes.SingleOrDefault()?.Reason);
        Assert.Equal(state, changes.SingleOrDefault()?.Entry.State);
    }

    [Fact]
    public void Decide_WantedAgainAfterATry_KeepsBytesAndWaitsAsLongAsItWould()
    {
        var stored = Entries.Make("x") with { State = OutboxState.Withdrawn, Settled = Now, Attempts = 2, NextTry = Now + Duration.FromMinutes(5) };
        var wanted = Entries.Make("x") with { Message = stored.Message with { Text = "other words" } };

        var revived = Assert.Single(Reconciler.Decide([wanted], Stock([stored]), Now)).Entry;

        Assert.Equal(stored.Message, revived.Message);
        Assert.Equal(stored.NextTry, revived.NextTry);
        Assert.Null(revived.Settled);
    }

    [Fact]
    public void Decide_WantedEarlierThanBefore_IsDueAtTheNewMoment()
    {
        var stored = Entries.Make("x", Now + (Hour * 3)) with { State = OutboxState.Withdrawn, Settled = Now };

        var revived = Assert.Single(Reconciler.Decide([Entries.Make("x", Now + Hour)], Stock([stored]), Now)).Entry;

        Assert.Equal(Now + Hour, OutboxTimes.DueAt(revived));
    }

    [Fact]
    public void Decide_SameKeyTwiceInWanted_MakesOneEntry() =>
        Assert.Single(Reconciler.Decide([Entries.Make("x"), Entries.Make("x") with { Id = "other" }], Stock([]), Now));

    [Fact]
    public async Task Apply_OtherGardensEntry_IsNotTouched()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        await store.WriteAsync(tx => Reconciler.Apply(tx, "ridge", [Entries.Make("x", garden: "ridge")], Now), TestContext.Current.CancellationToken);

        await store.WriteAsync(tx => Reconciler.Apply(tx, "hollow", [], Now), TestContext.Current.CancellationToken);

        Assert.Equal(OutboxState.Waiting, Assert.Single(store.Read(reader => OutboxTable.OfGarden(reader, "ridge"))).State);
        await Assert.ThrowsAsync<ArgumentException>(() => store.WriteAsync(
            tx => Reconciler.Apply(tx, "hollow", [Entries.Make("y", garden: "ridge")], Now), TestContext.Current.CancellationToken));
    }

    /// <summary>Any outbox, any wishes: the second time finds nothing to do, and a key never has two entries.</summary>
    [Fact]
    public void Decide_Twice_IsTheSameAsOnce() => Gen.Select(Outbox, Outbox).Sample((stored, wanted) =>
    {
        var once = After(stored, Reconciler.Decide(wanted, Stock(stored), Now));

        Assert.Empty(Reconciler.Decide(wanted, Stock(once), Now));
        Assert.Equal(once.Count, once.Select(entry => entry.Key).Distinct().Count());
    });

    /// <summary>Whatever was and is wanted, what waits afterwards is wanted and has time left; what was being sent, sent or refused stays.</summary>
    [Fact]
    public void Decide_AnyOutbox_WaitingIsWantedAndInTime() => Gen.Select(Outbox, Outbox).Sample((stored, wanted) =>
    {
        var after = After(stored, Reconciler.Decide(wanted, Stock(stored), Now));

        Assert.All(after.Where(entry => entry.State == OutboxState.Waiting), entry =>
        {
            Assert.Contains(wanted, wish => wish.Key == entry.Key);
            Assert.False(OutboxTimes.HasPassed(entry, Now));
        });
        Assert.All(
            stored.Where(entry => entry.State is OutboxState.Claimed or OutboxState.Sent or OutboxState.Refused),
            entry => Assert.Contains(entry, after));
        Assert.All(
            wanted.Where(wish => !OutboxTimes.HasPassed(wish, Now)),
            wish => Assert.Contains(after, entry => entry.Key == wish.Key && entry.State is not (OutboxState.Withdrawn or OutboxState.Expired)));
    });

    [Fact]
    public async Task Apply_WithdrawnThenWantedAgainThenSent_IsSentOnce()
    {
        using var folder = new TempFolder();
        using var store = StormStore.Open(folder.Path);
        var wish = Entries.Make("x");
        Task<IReadOnlyList<OutboxChange>> Reconcile(params OutboxEntry[] wanted) =>
            store.WriteAsync(tx => Reconciler.Apply(tx, "hollow", wanted, Now), TestContext.Current.CancellationToken);

        Assert.Equal(ReconcileReason.New, Assert.Single(await Reconcile(wish)).Reason);
        Assert.Empty(await Reconcile(wish));
        Assert.Equal(ReconcileReason.NoLongerWanted, Assert.Single(await Reconcile()).Reason);
        Assert.Empty(await Reconcile());
        Assert.Equal(ReconcileReason.WantedAgain, Assert.Single(await Reconcile(wish)).Reason);
        await store.WriteAsync(tx => OutboxTable.Update(tx, wish with { State = OutboxState.Sent }), TestContext.Current.CancellationToken);
        Assert.Empty(await Reconcile(wish));
        Assert.Empty(await Reconcile());
        Assert.Single(store.Read(reader => OutboxTable.OfGarden(reader, "hollow")));
    }

    private static OutboxStock Stock(IReadOnlyList<OutboxEntry> entries) => new(
        [.. entries.Where(entry => !OutboxStock.IsFinal(entry.State))],
        entries.Where(entry => OutboxStock.IsFinal(entry.State)).ToDictionary(entry => entry.Key, entry => entry.State == OutboxState.Sent ? entry.Settled : null));

    private static readonly Gen<List<OutboxEntry>> Outbox =
        (from occasion in Gen.Int[0, 7]
         from moment in Gen.Int[-300, 300]
         from useful in Gen.Int[1, 300]
         from state in Gen.Enum<OutboxState>()
         from attempts in Gen.Int[0, 3]
         from words in Gen.OneOf(Gen.Const("one"), Gen.Const("two"))
         let entry = Entries.Make($"o{occasion}", Now + Duration.FromMinutes(moment), Duration.FromMinutes(useful))
         select entry with { State = state, Attempts = attempts, Cause = words }).List[0, 10].Select(list => list.DistinctBy(entry => entry.Key).ToList());

    private static List<OutboxEntry> After(List<OutboxEntry> stored, IReadOnlyList<OutboxChange> changes)
    {
        var after = stored.ToDictionary(entry => entry.Id);
        foreach (var change in changes) after[change.Entry.Id] = change.Entry;
        return [.. after.Values];
    }
}
