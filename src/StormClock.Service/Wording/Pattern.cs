using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace StormClock.Service.Wording;

/// <summary>
/// One text with places for what differs, in the ICU message syntax as far as these texts need it: <c>{name}</c>, and
/// <c>{count, plural, one {# job} other {# jobs}}</c>. Braces mean nothing else; an apostrophe is an apostrophe.
/// </summary>
public sealed partial class Pattern
{
    private readonly IReadOnlyList<Piece> pieces;

    private Pattern(IReadOnlyList<Piece> pieces) => this.pieces = pieces;

    /// <summary>The names of what it takes, each once.</summary>
    public IReadOnlySet<string> Arguments => pieces.Where(piece => piece.Argument is not null).Select(piece => piece.Argument!).ToHashSet();

    /// <exception cref="FormatException">The text is no such pattern; it is part of the program, so that is a bug.</exception>
    public static Pattern Parse(string text)
    {
        var pieces = new List<Piece>();
        var at = 0;
        foreach (Match match in Place().Matches(text))
        {
            pieces.Add(new(Plain(text[at..match.Index], text)));
            pieces.Add(match.Groups["case"].Success ? Plural(match, text) : new("", match.Groups["name"].Value));
            at = match.Index + match.Length;
        }

        pieces.Add(new(Plain(text[at..], text)));
        return new([.. pieces.Where(piece => piece.Text.Length > 0 || piece.Argument is not null)]);
    }

    /// <summary>A value for each name; numbers are written without grouping.</summary>
    public string Fill(ReadOnlySpan<(string Name, object Value)> values)
    {
        var text = new StringBuilder();
        foreach (var piece in pieces)
        {
            if (piece.Argument is not { } name) text.Append(piece.Text);
            else if (piece.Cases is not { } cases) text.Append(CultureInfo.InvariantCulture, $"{Find(values, name)}");
            else text.Append(Counted(cases, (int)Find(values, name)));
        }

        return text.ToString();
    }

    /// <summary>The values that would give a text; null when none do.</summary>
    public (string Name, object Value)[]? ValuesOf(string text)
    {
        var form = string.Concat(pieces.Select(piece => piece.Argument is { } name ? $"(?<{name}>.+)" : Regex.Escape(piece.Text)));
        var match = Regex.Match(text, $"^{form}$", RegexOptions.CultureInvariant);
        return match.Success ? [.. Arguments.Select(name => (name, (object)match.Groups[name].Value))] : null;
    }

    /// <summary>English and Spanish have the same two cases for whole numbers below a million (CLDR).</summary>
    private static string Counted(IReadOnlyDictionary<string, string> cases, int count) =>
        cases[count == 1 ? "one" : "other"].Replace("#", count.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    private static object Find(ReadOnlySpan<(string Name, object Value)> values, string name)
    {
        foreach (var (known, value) in values)
        {
            if (known == name) return value;
        }

        throw new ArgumentException($"Nothing was given for '{name}'.", nameof(values));
    }

    private static Piece Plural(Match match, string text)
    {
        var names = match.Groups["case"].Captures.Select(capture => capture.Value);
        var cases = names.Zip(match.Groups["text"].Captures.Select(capture => capture.Value)).ToDictionary(pair => pair.First, pair => pair.Second);
        return cases.Keys.ToHashSet().SetEquals(["one", "other"]) ? new("", match.Groups["name"].Value, cases) : throw new FormatException($"'{text}' needs the cases one and other");
    }

    private static string Plain(string part, string text) =>
        part.AsSpan().ContainsAny('{', '}') ? throw new FormatException($"'{text}' has a brace that opens or closes nothing") : part;

    /// <param name="Text">Said as it stands.</param>
    /// <param name="Argument">Or the name of what is put in; null for plain text.</param>
    /// <param name="Cases">Texts by plural case; null where the value itself is put in.</param>
    private sealed record Piece(string Text, string? Argument = null, IReadOnlyDictionary<string, string>? Cases = null);

    [GeneratedRegex(@"\{(?<name>[a-z]+)(, plural,( (?<case>[a-z]+) \{(?<text>[^{}]*)\})+)?\}", RegexOptions.ExplicitCapture)]
    private static partial Regex Place();
}
