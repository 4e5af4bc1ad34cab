namespace StormClock.Service.Feeds;

/// <summary>
/// A folder into which something else puts messages, one a file. A file that was dealt with is read again only when its time
/// or length has changed, so a large folder costs little; one that could not be kept is shown again at the next look.
/// </summary>
public sealed class FolderFeed(string name, string folder) : IFeed
{
    private readonly Dictionary<string, (DateTime, long)> taken = [];
    private readonly Dictionary<string, (DateTime, long)> shown = [];

    public string Name => name;

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var messages = new List<RawMessage>();
        var troubles = new List<string>();
        try
        {
            foreach (var file in MessageFiles.In(folder))
            {
                if (await ReadAsync(file, troubles, cancellation) is { } message) messages.Add(message);
            }
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            troubles.Add(trouble.Message);
        }

        return new(messages, troubles.Count == 0 ? null : string.Join("; ", troubles));
    }

    public void Took(RawMessage message)
    {
        if (shown.Remove(message.Name, out var mark)) taken[message.Name] = mark;
    }

    /// <summary>Null when the file has been dealt with, or cannot be read; one bad file never hides another.</summary>
    private async Task<RawMessage?> ReadAsync(FileInfo file, List<string> troubles, CancellationToken cancellation)
    {
        try
        {
            var mark = (file.LastWriteTimeUtc, file.Length);
            if (taken.TryGetValue(file.Name, out var known) && known == mark) return null;
            var message = new RawMessage(file.Name, await MessageFiles.ReadAsync(file, cancellation));
            shown[file.Name] = mark;
            return message;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            troubles.Add($"{file.Name}: {trouble.Message}");
            return null;
        }
    }
}
