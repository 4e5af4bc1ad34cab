using System.Globalization;
using System.Text.RegularExpressions;

namespace StormClock.Service.Replies;

/// <summary>One line of an answer that says something of jobs, such as "done 3 5".</summary>
/// <param name="Numbers">Those the message shows; empty for all its jobs.</param>
public sealed partial record ReplyCommand(ReplyVerb Verb, IReadOnlyList<int> Numbers)
{
    /// <summary>No answer of ours is longer; characters.</summary>
    private const int LongestLine = 200;

    /// <summary>No message shows as many jobs.</summary>
    private const int HighestNumber = 999;

    /// <summary>
    /// Null when the whole line is not one verb, before or behind, with numbers. A question is no answer; nor is what could be an
    /// hour, a part or a percentage, or holds a number that is not read: "done" without it would mean every job.
    /// </summary>
    public static ReplyCommand? Read(string line)
    {
        if (line.Length > LongestLine) return null;

        var folded = ReplyWords.Fold(line);
        if (NoAnswer().IsMatch(folded)) return null;

        var words = Words().Matches(folded).Select(word => Dash().Replace(word.Value, "-")).Where(word => !ReplyWords.Beside.Contains(word)).ToList();
        foreach (var (phrase, verb) in ReplyWords.Verbs)
        {
            var said = phrase.Split(' ');
            if (words.Count < said.Length) continue;
            if (words.Take(said.Length).SequenceEqual(said)) return Of(verb, words[said.Length..]);
            if (words.TakeLast(said.Length).SequenceEqual(said)) return Of(verb, words[..^said.Length]);
        }

        return null;
    }

    private static ReplyCommand? Of(ReplyVerb verb, List<string> rest)
    {
        if (rest.Count == 0) return new(verb, []);
        if (verb == ReplyVerb.In) return null;
        if (rest is [var only] && ReplyWords.All.Contains(only)) return new(verb, []);

        var numbers = new List<int>();
        foreach (var word in rest)
        {
            if (Span(word) is not var (first, last)) return null;
            numbers.AddRange(Enumerable.Range(first, last - first + 1));
        }

        return new(verb, [.. numbers.Distinct()]);
    }

    /// <summary>"3" is from 3 to 3, "3-5" from 3 to 5; null when it is neither.</summary>
    private static (int First, int Last)? Span(string word)
    {
        var ends = word.Split('-');
        return Number(ends[0]) is { } first && Number(ends[^1]) is { } last && first <= last ? (first, last) : null;
    }

    private static int? Number(string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= HighestNumber ? number : null;

    /// <summary>Dashes of every length stand between two numbers only.</summary>
    [GeneratedRegex(@"[0-9]+\s*[-\u2010-\u2015\u2212]\s*[0-9]+|[0-9]+|\p{L}+")]
    private static partial Regex Words();

    [GeneratedRegex(@"\s*[-\u2010-\u2015\u2212]\s*")]
    private static partial Regex Dash();

    [GeneratedRegex(@"[?%\u00BF\p{No}\p{Nl}]|[0-9]\s*[/:.]\s*[0-9]")]
    private static partial Regex NoAnswer();
}
