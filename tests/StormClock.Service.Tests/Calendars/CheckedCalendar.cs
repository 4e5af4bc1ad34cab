using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using NodaTime.Text;

namespace StormClock.Service.Tests.Calendars;

/// <summary>One event as a strict reader finds it.</summary>
internal sealed record CheckedEvent(
    string Uid, int Sequence, Instant Stamp, Instant Start, Instant End, string Summary, string Location, string Description, string Status);

/// <summary>
/// A calendar file read back by the rules of RFC 5545 (3.1 lines, 3.3.5 times, 3.3.11 text, 3.4 and 3.6 what must be there),
/// written for these tests and from the standard alone. Anything against the rules fails the test.
/// </summary>
internal sealed partial record CheckedCalendar(IReadOnlyList<string> Lines, string? Method, IReadOnlyList<CheckedEvent> Events)
{
    private static readonly string[] OnceInEvent = ["UID", "DTSTAMP", "SEQUENCE", "DTSTART", "DTEND", "SUMMARY", "LOCATION", "DESCRIPTION", "STATUS"];
    private static readonly InstantPattern Utc = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss'Z'");

    public static CheckedCalendar Read(ReadOnlySpan<byte> bytes)
    {
        var lines = Unfold(bytes);
        var properties = lines.Select(Property).ToList();
        Assert.Equal(("BEGIN", "VCALENDAR"), (properties[0].Name, properties[0].Value));
        Assert.Equal(("END", "VCALENDAR"), (properties[^1].Name, properties[^1].Value));
        var inner = properties[1..^1];
        var first = inner.FindIndex(property => property.Name == "BEGIN");
        Assert.True(first >= 0, "a calendar must hold a component");
        var head = inner[..first].ToLookup(property => property.Name, property => property.Value);
        Assert.Equal("2.0", Assert.Single(head["VERSION"]));
        Assert.NotEmpty(Assert.Single(head["PRODID"]));
        Assert.DoesNotContain(properties, property => property.Value == "VALARM");
        return new(lines, head["METHOD"].SingleOrDefault(), [.. Components(inner[first..]).Where(component => component.Kind == "VEVENT").Select(component => Event(component.Inner, head.Contains("METHOD")))]);
    }

    public static CheckedCalendar Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    private static List<string> Unfold(ReadOnlySpan<byte> bytes)
    {
        var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
        var raw = new List<string>();
        while (bytes.Length > 0)
        {
            var end = bytes.IndexOf("\r\n"u8);
            Assert.True(end >= 0, "the last line has no end");
            Assert.InRange(end, 1, 75);
            var line = strict.GetString(bytes[..end]);
            Assert.DoesNotContain(line, c => char.IsControl(c) && c != '\t');
            raw.Add(line);
            bytes = bytes[(end + 2)..];
        }

        var lines = new List<string>();
        foreach (var line in raw)
        {
            if (line[0] is ' ' or '\t') lines[^1] += line[1..];
            else lines.Add(line);
        }

        return lines;
    }

    private static (string Name, string Value) Property(string line)
    {
        var match = ContentLine().Match(line);
        Assert.True(match.Success, line);
        return (match.Groups["name"].Value, match.Groups["value"].Value);
    }

    private static IEnumerable<(string Kind, List<(string Name, string Value)> Inner)> Components(List<(string Name, string Value)> lines)
    {
        for (var at = 0; at < lines.Count;)
        {
            Assert.Equal("BEGIN", lines[at].Name);
            var end = lines.FindIndex(at, line => line == ("END", lines[at].Value));
            Assert.True(end > at, $"{lines[at].Value} does not end");
            yield return (lines[at].Value, lines[(at + 1)..end]);
            at = end + 1;
        }
    }

    private static CheckedEvent Event(List<(string Name, string Value)> lines, bool isPublished)
    {
        var values = lines.ToLookup(line => line.Name, line => line.Value);
        string Of(string name) => Assert.Single(values[name]);
        Assert.Equal(OnceInEvent.Concat(isPublished ? ["ORGANIZER"] : []).Order(), lines.Select(line => line.Name).Order());
        var found = new CheckedEvent(
            Of("UID"), int.Parse(Of("SEQUENCE"), NumberStyles.None, CultureInfo.InvariantCulture), Time(Of("DTSTAMP")), Time(Of("DTSTART")), Time(Of("DTEND")),
            Text(Of("SUMMARY")), Text(Of("LOCATION")), Text(Of("DESCRIPTION")), Of("STATUS"));
        Assert.True(found.Start < found.End);
        Assert.Contains(found.Status, (string[])["CONFIRMED", "CANCELLED"]);
        return found;
    }

    private static Instant Time(string value) => Utc.Parse(value).Value;

    private static string Text(string value)
    {
        Assert.Matches(EscapedText(), value);
        return Escape().Replace(value, match => match.Value is "\\n" or "\\N" ? "\n" : match.Value[1..]);
    }

    [GeneratedRegex("^(?<name>[A-Z0-9-]+)(;[A-Z0-9-]+=([^\\x00-\\x1f\";:,]+|\"[^\\x00-\\x1f\"]*\"))*:(?<value>.*)$")]
    private static partial Regex ContentLine();

    /// <summary>Semicolon, comma and backslash only behind a backslash.</summary>
    [GeneratedRegex(@"^([^\\;,]|\\[\\;,nN])*$")]
    private static partial Regex EscapedText();

    [GeneratedRegex(@"\\[\\;,nN]")]
    private static partial Regex Escape();
}
