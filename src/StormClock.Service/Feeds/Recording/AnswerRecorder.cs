using System.Globalization;
using System.Text.Json;
using NodaTime.Text;

namespace StormClock.Service.Feeds.Recording;

/// <summary>
/// Keeps every answer as it came: a small JSON with the time and the headers, and the body in a file beside it, so that a storm
/// can be rehearsed later as it was heard. A disk that cannot take it is told once and keeps no message from being heard.
/// </summary>
/// <param name="tell">Takes the one sentence about a recording that fails.</param>
public sealed class AnswerRecorder(string folder, TimeProvider time, Action<string> tell)
{
    /// <summary>Ending of the notes; the body has the same name with <see cref="BodyEnding"/>.</summary>
    public const string NoteEnding = ".answer.json";

    public const string BodyEnding = ".body";

    private static readonly JsonSerializerOptions Pretty = new() { WriteIndented = true };

    private int count;
    private int told;

    public async Task KeepAsync(RecordedAnswer answer)
    {
        var at = time.GetUtcNow();
        var plain = string.Concat(answer.Feed.Take(40).Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        var name = string.Create(CultureInfo.InvariantCulture, $"{at:yyyyMMdd'T'HHmmssfff'Z'}-{plain}-{Interlocked.Increment(ref count):000000}");
        var body = answer.Body is { IsEmpty: false } ? name + BodyEnding : null;
        var note = new RecordedNote(InstantPattern.ExtendedIso.Format(Instant.FromDateTimeOffset(at)), answer.Feed, answer.Address, answer.Status, answer.Trouble, answer.Headers, body);
        try
        {
            Directory.CreateDirectory(folder);
            if (body is not null) await File.WriteAllBytesAsync(Path.Combine(folder, body), answer.Body!.Value.ToArray());
            await File.WriteAllTextAsync(Path.Combine(folder, name + NoteEnding), JsonSerializer.Serialize(note, Pretty));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            if (Interlocked.Exchange(ref told, 1) == 0) tell($"the answers of the feeds cannot be recorded in {folder}: {trouble.Message}");
        }
    }
}

/// <summary>The JSON beside a body.</summary>
/// <param name="BodyFile">Name of the file with the body; null where there was none.</param>
internal sealed record RecordedNote(string At, string Feed, string Address, int? Status, string? Trouble, IReadOnlyDictionary<string, string> Headers, string? BodyFile);
