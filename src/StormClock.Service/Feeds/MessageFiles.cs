namespace StormClock.Service.Feeds;

/// <summary>Files that may hold a message. Readers bound what they take; here only absurd sizes are kept out of memory.</summary>
internal static class MessageFiles
{
    /// <summary>Larger than any message; of a larger file only so much is read, which the readers then refuse by its size.</summary>
    private const int MostBytes = 4 * 1024 * 1024;

    private static readonly string[] Endings = [".txt", ".xml", ".cap", ".tcm", ".json"];

    public static IEnumerable<FileInfo> In(string folder) =>
        new DirectoryInfo(folder).EnumerateFiles()
            .Where(file => !file.Name.EndsWith(Recording.AnswerRecorder.NoteEnding, StringComparison.Ordinal) && Endings.Contains(file.Extension.ToLowerInvariant()))
            .OrderBy(file => file.Name, StringComparer.Ordinal);

    public static async Task<ReadOnlyMemory<byte>> ReadAsync(FileInfo file, CancellationToken cancellation)
    {
        await using var stream = file.OpenRead();
        var bytes = new byte[Math.Min(MostBytes, file.Length)];
        var read = await stream.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancellation);
        return bytes.AsMemory(0, read);
    }
}
