namespace StormClock.Service.Feeds;

/// <summary>Keeps every raw answer of a feed as a file named by time and feed, so that a storm can be rehearsed from it later.</summary>
public sealed class RecordingFeed(IFeed feed, string folder, TimeProvider time) : IFeed
{
    public string Name => feed.Name;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var answer = await feed.FetchAsync(cancellation);
        Directory.CreateDirectory(folder);
        for (var i = 0; i < answer.Messages.Count; i++)
        {
            var bytes = answer.Messages[i].Bytes;
            var ending = bytes.Length > 0 && bytes.Span[0] == (byte)'<' ? "xml" : "txt";
            var plainName = string.Concat(feed.Name.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
            var name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{time.GetUtcNow():yyyyMMdd'T'HHmmss'Z'}-{plainName}-{i:000}.{ending}");
            await File.WriteAllBytesAsync(Path.Combine(folder, name), bytes.ToArray(), cancellation);
        }

        return answer;
    }

    public void Took(RawMessage message) => feed.Took(message);
}
