using StormClock.Service.Feeds.Recording;
using StormClock.Service.Feeds.Signatures;

namespace StormClock.Service.Feeds;

/// <summary>
/// A folder into which something else puts messages, one a file. A file that was dealt with is read again only when its time
/// or length has changed, so a large folder costs little; one that could not be kept is shown again at the next look.
/// </summary>
public sealed class FolderFeed(string name, string folder, FeedPace? pace = null, AnswerRecorder? recorder = null) : IFeed
{
    private readonly Dictionary<string, (DateTime, long)> taken = [];
    private readonly Dictionary<string, (DateTime, long)> shown = [];

    public string Name => name;

    public FeedPace Pace => pace ?? FeedPace.Always;

    public FeedSigners? Signers { get; init; }

    public async Task<FeedAnswer> FetchAsync(CancellationToken cancellation)
    {
        var messages = new List<RawMessage>();
        var listed = false;
        var troubles = new List<string>();
        try
        {
            foreach (var file in MessageFiles.In(folder))
            {
                listed = true;
                if (await ReadAsync(file, troubles, cancellation) is { } message) messages.Add(message);
            }
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            troubles.Add(trouble.Message);
        }

        if (recorder is not null) foreach (var message in messages) await recorder.KeepAsync(new(name, Path.Combine(folder, message.Name)) { Body = message.Bytes });
        return new(messages, troubles.Count == 0 ? null : string.Join("; ", troubles)) { IsHeard = listed || troubles.Count == 0 };
    }

    public Task TookAsync(RawMessage message, bool understood, CancellationToken cancellation)
    {
        if (shown.Remove(message.Name, out var mark)) taken[message.Name] = mark;
        return Task.CompletedTask;
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
