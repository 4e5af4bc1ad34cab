using StormClock.Core;
using StormClock.Core.Formats.Feeds;
using StormClock.Service.Feeds.Signatures;

namespace StormClock.Service.Feeds.Web;

/// <summary>
/// An address that answers with a list of messages. Messages it carries whole are passed on; of those it links to, the newest
/// are fetched first, so many a look. One that could not be had is tried again at the next look, whether the list has changed or not.
/// </summary>
/// <param name="read">Reads the list.</param>
/// <param name="places">Whose places are kept of what the list brings; when they change, all of it is shown again.</param>
public sealed class ListFeed(FeedSource source, Uri at, FeedClient client, Func<ReadOnlyMemory<byte>, ReadResult<FeedIndex>> read, SeenEntries seen, GardenPlaces places) : IFeed
{
    private readonly Dictionary<RawMessage, (string Mark, bool Linked)> shown = new(ReferenceEqualityComparer.Instance);

    // By mark: entries of the last good list that have not been dealt with. The others are let go, since a country's list is large.
    private Dictionary<string, FeedEntry> open = [];
    private Validators? known;
    private string? placesThen;

    public string Name => source.Name;

    public FeedPace Pace => source.Pace;

    public Duration? StaleAfter => source.StaleAfter;

    public FeedSigners? Signers => source.Signers;

    public bool IsWide => true;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var placesNow = places.Mark;
        var fetched = await client.GetListAsync(source, at, placesThen == placesNow ? known : null, cancellation);
        if (fetched.State is not (FetchState.Good or FetchState.Unchanged)) return new([], fetched.Trouble) { NotBefore = fetched.NotBefore };
        if (fetched.State == FetchState.Good && Take(fetched, placesNow) is { } trouble) return new([], trouble);

        shown.Clear();
        foreach (var (mark, entry) in open.Where(one => !one.Value.Message.IsEmpty)) shown[new(entry.Id, entry.Message)] = (mark, false);
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
        open.Remove(entry.Mark);
        if (understood && entry.Linked) await seen.KeepAsync(entry.Mark, cancellation);
        else seen.Add(entry.Mark);
    }

    /// <summary>Takes a new list in force; why it cannot be, when it is none. The last good one then stays.</summary>
    private string? Take(Fetched fetched, string placesNow)
    {
        var index = read(fetched.Body);
        if (index.Value is not { } list) return $"this is no list that can be read: {string.Join("; ", index.Faults)}";
        var named = new Dictionary<string, FeedEntry>();
        foreach (var entry in list.Entries.Select(Absolute).Where(entry => !entry.Message.IsEmpty || entry.Link is not null)) named.TryAdd(MarkOf(entry, placesNow), entry);
        seen.ForgetAllBut(named.Keys.ToHashSet());
        open = named.Where(one => !seen.Has(one.Key)).ToDictionary();
        (known, placesThen) = (fetched.Validators, placesNow);
        return null;
    }

    /// <summary>A link may be written as seen from the list.</summary>
    private FeedEntry Absolute(FeedEntry entry) => entry.Link is { } link ? entry with { Link = Uri.TryCreate(at, link, out var whole) ? whole : null } : entry;

    private async Task<(List<string> Troubles, bool AllFailed, bool HasMore)> FetchLinksAsync(CancellationToken cancellation)
    {
        var wanted = open.Where(one => one.Value.Message.IsEmpty).OrderByDescending(one => one.Value.Updated ?? Instant.MaxValue).ToList();
        var troubles = new List<string>();
        var failed = 0;
        var asked = wanted.Take(client.Limits.MostLinks).ToList();
        foreach (var (mark, entry) in asked)
        {
            if (source.Refusal(at, entry.Link!) is { } refusal)
            {
                troubles.Add($"the entry {entry.Id} {refusal}");
                continue;
            }

            var fetched = await client.GetAsync(source, at, entry.Link!, null, cancellation);
            if (fetched.State == FetchState.Good) shown[new(entry.Link!.AbsoluteUri, fetched.Body)] = (mark, true);
            else troubles.Add($"{entry.Link}: {fetched.Trouble}");
            if (fetched.State == FetchState.Failed) failed++;
        }

        return (troubles, failed > 0 && failed == asked.Count, wanted.Count > asked.Count && failed == 0);
    }

    /// <summary>Identity and time of change; where the message lies in the list, its own bytes say more surely whether it has changed.</summary>
    private static string MarkOf(FeedEntry entry, string places) =>
        Store.Fingerprint.Of(places, entry.Id, $"{entry.Updated}", entry.Message.IsEmpty ? entry.Link?.AbsoluteUri ?? "" : ContentMark.Of(entry.Message.Span));
}
