using StormClock.Core;
using StormClock.Core.Formats.Feeds;

namespace StormClock.Service.Feeds.Web;

/// <summary>
/// An address that answers with a list of messages. Messages it carries whole are passed on; of those it links to, the newest
/// are fetched first, so many a look. One that could not be had is tried again at the next look, whether the list has changed or not.
/// </summary>
/// <param name="read">Reads the list.</param>
public sealed class ListFeed(FeedSource source, Uri at, FeedClient client, Func<ReadOnlyMemory<byte>, ReadResult<FeedIndex>> read, SeenEntries seen) : IFeed
{
    private readonly Dictionary<RawMessage, (string Mark, bool Linked)> shown = new(ReferenceEqualityComparer.Instance);
    private Validators? known;
    private FeedIndex? list;

    public string Name => source.Name;

    public FeedPace Pace => source.Pace;

    public Duration? StaleAfter => source.StaleAfter;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var fetched = await client.GetListAsync(source, at, list is null ? null : known, cancellation);
        if (fetched.State is not (FetchState.Good or FetchState.Unchanged)) return new([], fetched.Trouble) { NotBefore = fetched.NotBefore };
        if (fetched.State == FetchState.Good && Take(fetched) is { } trouble) return new([], trouble);

        shown.Clear();
        foreach (var entry in list!.Entries.Where(entry => !entry.Message.IsEmpty && !seen.Has(MarkOf(entry)))) Show(new(entry.Id, entry.Message), entry);
        var links = await FetchLinksAsync(cancellation);
        return new([.. shown.Keys], links.Troubles.Count == 0 ? null : string.Join("; ", links.Troubles))
        {
            IsHeard = !links.AllFailed,
            HasMore = links.HasMore,
            ContentMark = fetched.State == FetchState.Good ? ContentMark.Of(fetched.Body.Span) : null,
        };
    }

    public async Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation)
    {
        if (!shown.Remove(message, out var entry)) return;
        if (understood && entry.Linked) await seen.KeepAsync(entry.Mark, cancellation);
        else seen.Add(entry.Mark);
    }

    /// <summary>Takes a new list in force; why it cannot be, when it is none. The last good one then stays.</summary>
    private string? Take(Fetched fetched)
    {
        var index = read(fetched.Body);
        if (index.Value is null) return $"this is no list that can be read: {string.Join("; ", index.Faults)}";
        list = index.Value;
        known = fetched.Validators;
        seen.ForgetAllBut(list.Entries.Select(MarkOf).ToHashSet());
        return null;
    }

    private async Task<(List<string> Troubles, bool AllFailed, bool HasMore)> FetchLinksAsync(CancellationToken cancellation)
    {
        var wanted = list!.Entries
            .Where(entry => entry.Message.IsEmpty && entry.Link is not null && !seen.Has(MarkOf(entry)))
            .DistinctBy(MarkOf)
            .OrderByDescending(entry => entry.Updated ?? Instant.MaxValue)
            .ToList();
        var troubles = new List<string>();
        var failed = 0;
        var asked = wanted.Take(client.Limits.MostLinks).ToList();
        foreach (var entry in asked)
        {
            if (source.Refusal(at, entry.Link!) is { } refusal)
            {
                troubles.Add($"the entry {entry.Id} {refusal}");
                continue;
            }

            var fetched = await client.GetAsync(source, at, entry.Link!, null, cancellation);
            if (fetched.State == FetchState.Good) Show(new(entry.Link!.AbsoluteUri, fetched.Body), entry);
            else troubles.Add($"{entry.Link}: {fetched.Trouble}");
            if (fetched.State == FetchState.Failed) failed++;
        }

        return (troubles, failed > 0 && failed == asked.Count, wanted.Count > asked.Count && failed == 0);
    }

    private void Show(RawMessage message, FeedEntry entry) => shown[message] = (MarkOf(entry), entry.Message.IsEmpty);

    /// <summary>Identity and time of change; where the message lies in the list, its own bytes say more surely whether it has changed.</summary>
    private static string MarkOf(FeedEntry entry) =>
        Store.Fingerprint.Of(entry.Id, $"{entry.Updated}", entry.Message.IsEmpty ? entry.Link?.AbsoluteUri ?? "" : ContentMark.Of(entry.Message.Span));
}
