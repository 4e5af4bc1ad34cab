using StormClock.Service.Photos;
using StormClock.Service.Store;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Photos;

public sealed class PhotoNotesTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly StormStore store;

    public PhotoNotesTests() => store = StormStore.Open(folder.Path);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Fact]
    public async Task Notes_OfAGarden_AreItsOwnOldestFirst()
    {
        var (late, early, other) = (Note("a", "quay", "sketch", 9), Note("b", "quay", "item/fig-pots", 1), Note("c", "quay2", "sketch", 0));
        await store.WriteAsync(tx => Assert.All(new[] { late, early, other }, note => PhotoNotes.Put(tx, note)), Cancellation);

        Assert.Equal([early, late], store.Read(reader => PhotoNotes.OfGarden(reader, "quay")));
        Assert.Equal([late], store.Read(reader => PhotoNotes.Of(reader, "quay", "sketch")));
        Assert.Empty(store.Read(reader => PhotoNotes.Of(reader, "quay", "item/fig")));
        Assert.Equal(other, store.Read(reader => PhotoNotes.Find(reader, "c")));
    }

    [Fact]
    public async Task Note_PutAgainAndRemoved_IsTheLastWord()
    {
        await store.WriteAsync(tx => PhotoNotes.Put(tx, Note("a", "quay", "sketch", 0)), Cancellation);
        await store.WriteAsync(tx => PhotoNotes.Put(tx, Note("a", "quay", "item/shed", 0)), Cancellation);
        Assert.Equal("item/shed", Assert.Single(store.Read(reader => PhotoNotes.OfGarden(reader, "quay"))).Subject);

        await store.WriteAsync(tx => PhotoNotes.Remove(tx, "a"), Cancellation);

        Assert.Null(store.Read(reader => PhotoNotes.Find(reader, "a")));
    }

    private static PhotoNote Note(string id, string garden, string subject, int minute) =>
        new(id, garden, subject, new string('0', 32), Entries.Start + Duration.FromMinutes(minute), "ada", 1600, 1200);
}
