using System.Text;

namespace StormClock.Core.Formats.Feeds;

/// <summary>One entry of a list in XML while it is being read.</summary>
internal sealed class XmlEntry(XmlListName name)
{
    private readonly Dictionary<string, string> fields = [];
    private readonly List<ReadOnlyMemory<byte>> messages = [];
    private (int Rank, string Href) link = (0, "");

    public void Add(ReadOnlyMemory<byte> message) => messages.Add(message);

    /// <summary>Text of a field; one may come in several pieces.</summary>
    public void Add(string field, string text)
    {
        if (field.Length > 0) fields[field] = fields.GetValueOrDefault(field, "") + text;
    }

    /// <summary>Of several links, the one that says it leads to an alert is best; those to pages for people are left out.</summary>
    public void AddLink(string href, string? rel, string? type)
    {
        var rank = type switch
        {
            "application/cap+xml" => 3,
            null or "" or "application/xml" or "text/xml" when rel is null or "" or "alternate" => 2,
            _ => 0,
        };
        if (rank > link.Rank) link = (rank, href);
    }

    /// <summary>The entry, or several where it holds several messages.</summary>
    /// <param name="carriesTexts">The list holds its messages as texts, and its links lead to pages for people.</param>
    public IEnumerable<FeedEntry> Finish(bool carriesTexts)
    {
        if (messages.Count == 0 && TextMessage() is { IsEmpty: false } text) messages.Add(text);

        var updated = name.Updated.Select(one => FeedTime.Parse(Field(one))).FirstOrDefault(time => time is not null);
        var uri = carriesTexts ? null : FeedLink.Parse(link.Rank > 0 ? link.Href : Field("link"));
        var id = new[] { Field(name.Id), uri?.OriginalString ?? "", Field("title") }.First(one => one.Length > 0 || one == Field("title"));
        if (updated is { } time) id = $"{id} {time}";

        if (messages.Count == 0) return [new FeedEntry(id, Field("title"), default, uri, updated)];
        return messages.Select((message, i) => new FeedEntry(i == 0 ? id : $"{id} #{i + 1}", Field("title"), message, uri, updated));
    }

    /// <summary>The message that stands in a field as text: a bulletin, or an alert written out.</summary>
    private ReadOnlyMemory<byte> TextMessage()
    {
        foreach (var text in name.Body.Select(Field))
        {
            if (text.StartsWith('<') && text.Contains("urn:oasis:names:tc:emergency:cap:", StringComparison.OrdinalIgnoreCase)) return Encoding.UTF8.GetBytes(text);
            if (PreText.Of(text) is { } bulletin && Encoding.UTF8.GetBytes(bulletin) is var bytes && !KnownProduct.IsProse(KnownProduct.Of(bytes))) return bytes;
        }

        return default;
    }

    private string Field(string field) => fields.GetValueOrDefault(field, "").Trim();
}
