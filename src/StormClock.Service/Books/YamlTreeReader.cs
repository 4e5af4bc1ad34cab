using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace StormClock.Service.Books;

/// <summary>
/// Builds the tree of one YAML text from the parser's events. The library's own document model stops at the first
/// repeated key, follows aliases and recurses as deep as the text asks; here each of these is a fault with its line.
/// </summary>
internal sealed partial class YamlTreeReader
{
    private const int DeepestNesting = 12;

    private readonly FaultList faults;
    private readonly Parser parser;
    private readonly string text;
    private bool stopped;

    private YamlTreeReader(string text, FaultList faults)
    {
        this.faults = faults;
        this.text = text;
        parser = new Parser(new StringReader(text));
    }

    /// <summary>The mapping at the top of the text; null when there is none, with the reason in <paramref name="faults"/>.</summary>
    public static YamlMap? Read(string text, FaultList faults)
    {
        text = text.TrimStart('\uFEFF');
        if (!YamlGate.Passes(text, faults)) return null;

        try
        {
            return new YamlTreeReader(text, faults).Document();
        }
        catch (YamlException broken)
        {
            faults.Add((int)broken.Start.Line, $"broken YAML ({Detail(broken)}); check the indentation, closing brackets and quotes, and quote text that holds ': ' or ' #'");
            return null;
        }
    }

    private static string Detail(YamlException broken) => LeadingPosition().Replace(broken.Message, "").TrimEnd('.', ' ');

    [GeneratedRegex(@"^\(Line: \d+, Col: \d+, Idx: \d+\) - \(Line: \d+, Col: \d+, Idx: \d+\): ")]
    private static partial Regex LeadingPosition();

    private YamlMap? Document()
    {
        Next();
        Next();
        if (parser.Current is StreamEnd or null)
        {
            faults.Add(1, "the file is empty");
            return null;
        }

        Next();
        var top = Node(0);
        if (stopped) return null;

        Next();
        Next();
        if (parser.Current is DocumentStart second) faults.Add(LineOf(second), "a second document begins here (---); keep one a file");
        if (top is YamlMap map) return map;

        faults.Add(top.Line, top is YamlText { IsNothing: true } ? "the file is empty" : "the file must be keys with values ('key: value'), one a line");
        return null;
    }

    /// <summary>On some broken texts the library gives up with an exception of its own workings; that is broken YAML too.</summary>
    private void Next()
    {
        var reached = parser.Current?.End ?? Mark.Empty;
        try
        {
            if (parser.MoveNext()) return;
        }
        catch (InvalidOperationException)
        {
            throw new YamlException(reached, reached, "it cannot be followed from here on");
        }

        throw new YamlException(reached, reached, "it ends too early");
    }

    private static int LineOf(ParsingEvent piece) => (int)piece.Start.Line;

    /// <summary>Reads the node at the current event and leaves the parser on its last event.</summary>
    private YamlNode Node(int depth)
    {
        var piece = parser.Current!;
        var line = LineOf(piece);
        if (piece is NodeEvent node) RefuseMarks(node);
        if (depth > DeepestNesting) return Stop(line, $"nested more than {DeepestNesting} deep; a file of this kind never is");

        return piece switch
        {
            Scalar scalar => new YamlText(line, scalar.Value, scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any)) { Span = From(scalar, scalar.End.Index) },
            SequenceStart list => List(line, depth, list),
            MappingStart map => Map(line, depth, map),
            AnchorAlias alias => Alias(line, alias),
            _ => Stop(line, "broken YAML; check the lines above"),
        };
    }

    private void RefuseMarks(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty) faults.Add(LineOf(node), $"the anchor '&{node.Anchor}' is not read here; take it out and write each value in full");
        if (!node.Tag.IsEmpty) faults.Add(LineOf(node), $"the tag '{node.Tag}' is not read here; take it out");
    }

    private YamlHole Alias(int line, AnchorAlias alias)
    {
        faults.Add(line, $"the alias '*{alias.Value}' is not read here; write the value in full");
        return new YamlHole(line);
    }

    private YamlHole Stop(int line, string reason)
    {
        if (!stopped) faults.Add(line, reason);
        stopped = true;
        return new YamlHole(line);
    }

    /// <summary>Without the blanks that the library counts in at the end of some texts.</summary>
    private YamlSpan From(ParsingEvent first, long lastEnd)
    {
        var start = (int)Math.Min(first.Start.Index, text.Length);
        var end = (int)Math.Clamp(lastEnd, start, text.Length);
        return new YamlSpan(start, start + text.AsSpan(start, end - start).TrimEnd().Length);
    }

    /// <summary>
    /// From the beginning of a list or mapping to its closing bracket, which the current event is at, or to the end of the last
    /// thing in it. The library's own end of a block lies behind the empty lines and remarks that follow it.
    /// </summary>
    private YamlSpan From(NodeEvent first, bool flow, YamlNode? last) =>
        From(first, flow || last is null ? parser.Current!.Start.Index + 1 : last.Span.End);

    private YamlList List(int line, int depth, SequenceStart first)
    {
        var entries = new List<YamlNode>();
        Next();
        while (!stopped && parser.Current is not SequenceEnd)
        {
            entries.Add(Node(depth + 1));
            Next();
        }

        var flow = first.Style == SequenceStyle.Flow;
        return new YamlList(line, entries) { Flow = flow, Span = From(first, flow, entries.LastOrDefault()) };
    }

    private YamlMap Map(int line, int depth, MappingStart first)
    {
        var entries = new Dictionary<string, YamlEntry>();
        Next();
        while (!stopped && parser.Current is not MappingEnd)
        {
            var key = Node(depth + 1);
            Next();
            if (stopped) break;

            var value = Node(depth + 1);
            Next();
            Keep(entries, key, value);
        }

        var flow = first.Style == MappingStyle.Flow;
        return new YamlMap(line, [.. entries.Values]) { Flow = flow, Span = From(first, flow, entries.Values.LastOrDefault()?.Value) };
    }

    private void Keep(Dictionary<string, YamlEntry> entries, YamlNode key, YamlNode value)
    {
        if (key is not YamlText { Value: not "" } name)
        {
            faults.Add(key.Line, "a key must be one plain word before a colon");
            return;
        }

        if (!entries.TryAdd(name.Value, new YamlEntry(name.Value, name.Line, value) { KeySpan = name.Span }))
            faults.Add(name.Line, $"'{YamlFields.Shown(name.Value)}' is written twice (first in line {entries[name.Value].Line}); keep one");
    }
}
