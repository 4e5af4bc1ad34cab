using System.Text.RegularExpressions;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.LocalStatement;

/// <summary>
/// Reads the local offices' watches, warnings and advisories in text (products TCV, NPW, FFW, FLS, CFW and their like) by their
/// zone and VTEC lines. One text gives a message for each event and action in it: what is new here may be cancelled there.
/// </summary>
public static partial class LocalStatementReader
{
    /// <summary>Larger texts are refused unread; the largest at hand has 36 KB.</summary>
    public const int MostBytes = 512 * 1024;

    /// <summary>More parts or codes than any statement has.</summary>
    private const int MostSegments = 500;

    public static ReadResult<IReadOnlyList<Advisory>> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes) return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB, so it is no local statement", 1);
        return SourceText.Decode(bytes.Span) is { } text
            ? ReadLines(SourceText.Lines(text))
            : ReadFault.At(1, "there is binary data in the text; fetch it again");
    }

    private static ReadResult<IReadOnlyList<Advisory>> ReadLines(string[] lines)
    {
        if (IssueTime.Of(lines) is not { } issued) return ReadFault.At(1, "no date line such as 404 AM CDT Sun Jul 7 2024 in a zone that is known");

        var faults = new List<ReadFault>();
        var segments = Segments(lines, issued, faults);
        if (faults.Count == 0 && segments.Count == 0) faults.Add(ReadFault.At(1, "no part of the text has a line of zones with a VTEC line below it"));
        if (segments.Count > MostSegments) faults.Add(ReadFault.At(1, $"more than {MostSegments} parts are not read"));
        if (faults.Count > 0) return ReadResult.Bad<IReadOnlyList<Advisory>>(faults);

        var status = TestWords().IsMatch(string.Join('\n', lines)) ? AlertStatus.Test : AlertStatus.Actual;
        return ReadResult.Good<IReadOnlyList<Advisory>>([.. new StatementMessages(issued, CorrectionOf(lines), status).Of(segments)]);
    }

    /// <summary>Parts with events; one with zones only tells of nothing that stands.</summary>
    private static List<StatementSegment> Segments(string[] lines, Instant issued, List<ReadFault> faults)
    {
        var segments = new List<StatementSegment>();
        for (var i = 0; i < lines.Length;)
        {
            if (VtecEvent.LooksLike(lines[i])) faults.Add(ReadFault.At(i + 1, "a VTEC line without a line of zones right above it"));
            if (!UgcLine.Begins(lines[i]))
            {
                i++;
                continue;
            }

            var start = i;
            var ugc = UgcLine.Read(lines, start, issued, out i);
            var events = Events(lines, ref i, faults);
            if (ugc is null && events.Count > 0) faults.Add(ReadFault.At(start + 1, "the zones are not written like FLZ151-155>158-272300- with day and time at the end"));
            var words = lines.Skip(i).TakeWhile(line => line != "$$" && !UgcLine.Begins(line) && !VtecEvent.LooksLike(line)).ToList();
            if (ugc is not null && events.Count > 0) segments.Add(new StatementSegment(ugc, events, words));
            i += words.Count;
        }

        return segments;
    }

    private static List<(VtecEvent Told, string Line)> Events(string[] lines, ref int i, List<ReadFault> faults)
    {
        var events = new List<(VtecEvent, string)>();
        for (; i < lines.Length && lines[i].StartsWith('/'); i++)
        {
            // The second line of a flood event tells of the river's crest.
            if (!VtecEvent.LooksLike(lines[i])) continue;
            if (VtecEvent.Read(lines[i]) is { } told) events.Add((told, lines[i]));
            else faults.Add(ReadFault.At(i + 1, "is no VTEC line such as /O.NEW.KTBW.HU.W.1009.220927T2100Z-000000T0000Z/"));
        }

        return events;
    }

    /// <summary>CCA, CCB … in the heading, "" when there is none.</summary>
    private static string CorrectionOf(string[] lines) =>
        lines.Take(10).Select(line => Correction().Match(line)).FirstOrDefault(match => match.Success)?.Groups["letters"].Value ?? "";

    [GeneratedRegex(@"^[A-Z]{4}[0-9]{2}\s+[A-Z]{4}\s+[0-9]{6}\s+(?<letters>CC[A-X])\b", RegexOptions.CultureInvariant)]
    private static partial Regex Correction();

    [GeneratedRegex(@"\.\.\.\s*(?:THIS IS A )?TEST\b|TEST[ _]PURPOSES|PURPOSES OF TESTING|THIS IS (?:ONLY )?A TEST\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex TestWords();
}
