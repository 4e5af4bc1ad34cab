using StormClock.Service.Store;

namespace StormClock.Service.Feeds.Web;

/// <summary>Which entries of a list have been dealt with. Linked ones are kept on the disk, so that no restart fetches them all again.</summary>
public sealed class SeenEntries(StormStore store, string feed)
{
    private readonly HashSet<string> kept = [.. store.Read(reader => FeedEntries.Of(reader, feed))];
    private readonly HashSet<string> passing = [];

    public bool Has(string mark) => kept.Contains(mark) || passing.Contains(mark);

    /// <summary>Until the service ends.</summary>
    public void Add(string mark) => passing.Add(mark);

    public async Task KeepAsync(string mark, CancellationToken cancellation)
    {
        if (kept.Add(mark)) await store.WriteAsync(transaction => FeedEntries.Put(transaction, feed, kept), cancellation);
    }

    /// <summary>What the list no longer names will not be asked about again.</summary>
    public void ForgetAllBut(IReadOnlySet<string> named)
    {
        kept.IntersectWith(named);
        passing.IntersectWith(named);
    }
}
