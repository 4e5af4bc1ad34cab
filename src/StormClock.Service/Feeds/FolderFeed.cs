namespace StormClock.Service.Feeds;

/// <summary>
/// A folder into which something else puts messages, one a file. A file is read again only when its time or length has
/// changed, so a large folder costs little.
/// </summary>
public sealed class FolderFeed(string name, string folder) : IFeed
{
    private readonly Dictionary<string, (DateTime, long)> seen = [];

    public string Name => name;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        try
        {
            var messages = new List<RawMessage>();
            foreach (var file in MessageFiles.In(folder))
            {
                var mark = (file.LastWriteTimeUtc, file.Length);
                if (seen.TryGetValue(file.FullName, out var known) && known == mark) continue;
                messages.Add(new(file.Name, await MessageFiles.ReadAsync(file, cancellation)));
                seen[file.FullName] = mark;
            }

            return new(messages);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new([], trouble.Message);
        }
    }
}
