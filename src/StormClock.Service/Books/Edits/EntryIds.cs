using System.Text;
using StormClock.Service.Replies;

namespace StormClock.Service.Books.Edits;

/// <summary>Ids of entries, from the names that people give.</summary>
public static class EntryIds
{
    /// <summary>Long enough to tell, short enough to leave room for a number within what a book takes.</summary>
    private const int Longest = 50;

    private static readonly Dictionary<char, string> Others = new()
    {
        ['ß'] = "ss", ['æ'] = "ae", ['œ'] = "oe", ['ø'] = "o", ['ł'] = "l", ['đ'] = "d", ['ð'] = "d", ['þ'] = "th", ['ı'] = "i",
        ['ā'] = "a", ['ă'] = "a", ['ą'] = "a", ['ć'] = "c", ['č'] = "c", ['ď'] = "d", ['ē'] = "e", ['ė'] = "e", ['ę'] = "e", ['ě'] = "e", ['ğ'] = "g", ['ī'] = "i", ['į'] = "i",
        ['ľ'] = "l", ['ń'] = "n", ['ň'] = "n", ['ō'] = "o", ['ő'] = "o", ['ř'] = "r", ['ś'] = "s", ['ş'] = "s", ['š'] = "s", ['ș'] = "s", ['ť'] = "t", ['ţ'] = "t", ['ț'] = "t",
        ['ū'] = "u", ['ů'] = "u", ['ű'] = "u", ['ų'] = "u", ['ý'] = "y", ['ÿ'] = "y", ['ź'] = "z", ['ż'] = "z", ['ž'] = "z",
    };

    /// <summary>"Fig pots" gives <c>fig-pots</c>: small letters without accents, digits, and hyphens for all the rest.</summary>
    /// <param name="otherwise">For a name of which nothing is left, such as one in another script.</param>
    public static string Of(string name, string otherwise)
    {
        var id = new StringBuilder();
        foreach (var letter in ReplyWords.Fold(name).SelectMany(letter => Others.GetValueOrDefault(letter) ?? letter.ToString()))
        {
            if (id.Length == Longest) break;
            if (char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter)) id.Append(letter);
            else if (id.Length > 0 && id[^1] != '-') id.Append('-');
        }

        return id.ToString().TrimEnd('-') is { Length: > 0 } made ? made : otherwise;
    }

    /// <summary>The id itself, or the same with the next free number from 2 on.</summary>
    /// <param name="taken">Ids of the other entries of the list.</param>
    public static string Free(string id, IReadOnlyCollection<string> taken)
    {
        if (!taken.Contains(id)) return id;

        var stem = id[..Math.Min(id.Length, Longest)].TrimEnd('-');
        return Enumerable.Range(2, taken.Count + 1).Select(number => $"{stem}-{number}").First(other => !taken.Contains(other));
    }
}
