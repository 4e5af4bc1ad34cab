using System.Text.Json;
using NodaTime.Text;
using StormClock.Core;
using StormClock.Core.Advisories;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;

namespace StormClock.Service.Feeds.Recording;

/// <summary>A message with the time at which it was heard.</summary>
public sealed record HeardMessage(Advisory Advisory, RawMessage Raw, Instant HeardAt);

/// <summary>A folder that <see cref="AnswerRecorder"/> has filled, read back.</summary>
public static class RecordedFolder
{
    public static bool Is(string folder) => Directory.Exists(folder) && Directory.EnumerateFiles(folder, "*" + AnswerRecorder.NoteEnding).Any();

    /// <summary>
    /// Every message once, at the time of its first hearing, in that order. Answers that hold none (lists, pages, faults) are
    /// passed over, as the service passed over them.
    /// </summary>
    /// <param name="readList">Finds messages that lists carry whole.</param>
    /// <returns>A fault for a note that cannot be used.</returns>
    public static (IReadOnlyList<HeardMessage> Heard, IReadOnlyList<ReadFault> Faults) Read(string folder, Func<ReadOnlyMemory<byte>, ReadResult<FeedIndex>> readList)
    {
        var heard = new List<HeardMessage>();
        var faults = new List<ReadFault>();
        var known = new HashSet<string>();
        foreach (var file in Directory.EnumerateFiles(folder, "*" + AnswerRecorder.NoteEnding).Order(StringComparer.Ordinal))
        {
            if (NoteOf(file) is not { } note)
            {
                faults.Add(new(Path.GetFileName(file), "is no note of a recorded answer; take it out of the folder"));
                continue;
            }

            if (note.BodyFile is null || note.Status is not (null or 200 or 203)) continue;
            var path = Path.Combine(folder, Path.GetFileName(note.BodyFile));
            if (!File.Exists(path))
            {
                faults.Add(new(Path.GetFileName(file), $"names the body {note.BodyFile}, which is not there"));
                continue;
            }

            foreach (var raw in MessagesIn(new(note.Address, File.ReadAllBytes(path)), readList).Where(raw => known.Add(ContentMark.Of(raw.Bytes.Span))))
            {
                foreach (var advisory in MessageReader.ReadAll(raw.Bytes).Value ?? []) heard.Add(new(advisory, raw, InstantPattern.ExtendedIso.Parse(note.At).Value));
            }
        }

        return ([.. heard.OrderBy(message => message.HeardAt).ThenBy(message => message.Advisory.Issued).ThenBy(message => message.Advisory.Id, StringComparer.Ordinal)], faults);
    }

    private static IEnumerable<RawMessage> MessagesIn(RawMessage body, Func<ReadOnlyMemory<byte>, ReadResult<FeedIndex>> readList) =>
        readList(body.Bytes).Value is { } list ? list.Entries.Where(entry => !entry.Message.IsEmpty).Select(entry => new RawMessage(entry.Id, entry.Message)) : [body];

    private static RecordedNote? NoteOf(string file)
    {
        try
        {
            return JsonSerializer.Deserialize<RecordedNote>(File.ReadAllText(file)) is { Address: not null, At: not null } note && InstantPattern.ExtendedIso.Parse(note.At).Success ? note : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
