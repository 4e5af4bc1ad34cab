using System.Globalization;
using System.Text;

namespace StormClock.Service.Replies;

/// <summary>What a person may say in an answer by mail.</summary>
public enum ReplyVerb { Done, Cannot, Later, In }

/// <summary>The words that count in an answer, in the folded form of <see cref="Fold"/>. A language is added by its lines here.</summary>
internal static class ReplyWords
{
    /// <summary>Longer ones first where one begins like another.</summary>
    public static readonly IReadOnlyList<(string Words, ReplyVerb Verb)> Verbs =
    [
        ("done", ReplyVerb.Done),
        ("can not", ReplyVerb.Cannot), ("cannot", ReplyVerb.Cannot), ("cant", ReplyVerb.Cannot),
        ("later", ReplyVerb.Later),
        ("in", ReplyVerb.In),
        ("hecho", ReplyVerb.Done), ("hecha", ReplyVerb.Done), ("listo", ReplyVerb.Done), ("lista", ReplyVerb.Done),
        ("no se puede", ReplyVerb.Cannot), ("no puedo", ReplyVerb.Cannot), ("no podemos", ReplyVerb.Cannot),
        ("luego", ReplyVerb.Later), ("mas tarde", ReplyVerb.Later), ("despues", ReplyVerb.Later),
        ("adentro", ReplyVerb.In), ("dentro", ReplyVerb.In),
    ];

    /// <summary>All the jobs of the message, said in words.</summary>
    public static readonly IReadOnlySet<string> All = new HashSet<string> { "all", "todo", "todos", "todas" };

    /// <summary>Said beside a verb or a number, and changes neither. Words that would make it a question or its opposite are not among them.</summary>
    public static readonly IReadOnlySet<string> Beside = new HashSet<string>
    {
        "and", "job", "jobs", "number", "numbers",
        "i", "im", "am", "ive", "we", "weve", "thanks", "thank", "you", "please", "ok", "okay", "yes", "now",
        "y", "e", "el", "los", "trabajo", "trabajos", "numero", "numeros", "estoy", "estamos", "ya", "gracias", "por", "favor", "ahora",
    };

    /// <summary>How a mail program introduces what it quotes: the line begins and ends so.</summary>
    public static readonly IReadOnlyList<(string Begins, string Ends)> Introductions = [("on ", " wrote:"), ("el ", " escribio:")];

    /// <summary>The first line of the head that some mail programs put above what they quote.</summary>
    public static readonly IReadOnlyList<string> Heads = ["from:", "sent:", "begin forwarded message", "de:", "enviado:", "enviado el:", "inicio del mensaje reenviado"];

    private const string Accented = "áàâäãåéèêëíìîïóòôöõúùûüñç";
    private const string Bare = "aaaaaaeeeeiiiiooooouuuunc";

    /// <summary>
    /// Small letters and plain digits, no accents or apostrophes: people write on phones and in a hurry. Done by hand, since the
    /// runtime brings texts into a common form only where the system's language data are installed.
    /// </summary>
    public static string Fold(string line)
    {
        var folded = new StringBuilder(line.Length);
        foreach (var rune in line.EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(rune);
            if (IsApostrophe(rune) || category is UnicodeCategory.NonSpacingMark or UnicodeCategory.Format) continue;
            if (Rune.IsWhiteSpace(rune) || Rune.IsControl(rune)) folded.Append(' ');
            else if (category == UnicodeCategory.DecimalDigitNumber) folded.Append((int)Rune.GetNumericValue(rune));
            else folded.Append(WithoutAccent(Rune.ToLowerInvariant(rune)));
        }

        return folded.ToString().Trim();
    }

    private static bool IsApostrophe(Rune rune) => rune.Value is '\'' or '\u2019' or '\u2018' or '`' or '\u00B4';

    private static string WithoutAccent(Rune small)
    {
        var letter = small.ToString();
        return Accented.IndexOf(letter, StringComparison.Ordinal) is >= 0 and var at ? Bare[at].ToString() : letter;
    }
}
