using System.Text.RegularExpressions;

namespace StormClock.Service.Replies;

/// <summary>What an answer says above everything that it quotes.</summary>
/// <param name="Commands">Those of the first line that is one, and of the lines right below it that name numbers.</param>
/// <param name="FirstWords">The first line written, for telling its writer what was not understood; null when nothing was.</param>
public sealed partial record ReplyText(IReadOnlyList<ReplyCommand> Commands, string? FirstWords)
{
    /// <summary>An answer further down is not looked for.</summary>
    private const int MostLines = 60;

    /// <summary>Characters of our own letter in a row by which a line is known as quoted, marked or not.</summary>
    private const int OwnWords = 12;

    /// <param name="letter">The letter answered to: a line that it has is quoted; "" when it is not known.</param>
    public static ReplyText Read(IEnumerable<string> lines, string letter)
    {
        var own = OneLine(letter);
        var commands = new List<ReplyCommand>();
        string? first = null;
        foreach (var line in lines.Take(MostLines).Select(OneLine).TakeWhile(line => !IsQuoted(line, own)))
        {
            var command = ReplyCommand.Read(line);
            if (commands.Count > 0 && command is not { Numbers.Count: > 0 }) break;
            if (line.Length > 0) first ??= line;
            if (command is not null) commands.Add(command);
        }

        return new(commands, first);
    }

    /// <summary>From here on the line is not the writer's: quoted, introduced as quoted, a signature, or a rule above either.</summary>
    private static bool IsQuoted(string line, string letter)
    {
        if (line.Length == 0) return false;
        if (line[0] is '>' or '|' || line == "--" || Rule().IsMatch(line)) return true;
        if (line.Length >= OwnWords && letter.Contains(line, StringComparison.OrdinalIgnoreCase)) return true;

        var folded = ReplyWords.Fold(line).TrimStart('*', '_', ' ');
        return ReplyWords.Heads.Any(head => folded.StartsWith(head, StringComparison.Ordinal))
            || ReplyWords.Introductions.Any(words => folded.StartsWith(words.Begins, StringComparison.Ordinal) && folded.EndsWith(words.Ends, StringComparison.Ordinal));
    }

    /// <summary>Mail programs break lines where they like.</summary>
    private static string OneLine(string text) => Blanks().Replace(text, " ").Trim();

    [GeneratedRegex(@"^([-_=*]\s?){5,}")]
    private static partial Regex Rule();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
