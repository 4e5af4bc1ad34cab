using System.Text.RegularExpressions;
using StormClock.Core.Garden;
using StormClock.Service.Books.Kinds;
using StormClock.Service.Messages;
using StormClock.Service.Photos;
using StormClock.Service.Wording;

namespace StormClock.Service.Tests.Wording;

/// <summary>The files of words: complete, alike, all of it used, and never a promise.</summary>
public partial class WordingTests
{
    private static IReadOnlyDictionary<string, Pattern> English => WordList.Of(Language.English).Patterns;

    public static TheoryData<Language> Languages => [.. Enum.GetValues<Language>()];

    [Theory, MemberData(nameof(Languages))]
    public void Words_EachLanguage_HasTheSameKeysArgumentsAndCases(Language language)
    {
        var words = WordList.Of(language);
        Assert.Equal(English.Keys.Order(), words.Patterns.Keys.Order());
        Assert.All(English, pair =>
        {
            Assert.Equal(pair.Value.Arguments.Order(), words.Patterns[pair.Key].Arguments.Order());
            Assert.Equal(Cases(WordList.Of(Language.English).Texts[pair.Key]), Cases(words.Texts[pair.Key]));
        });
    }

    [Fact]
    public void Words_EachKey_IsUsedAndEachUsedKeyIsThere()
    {
        var code = string.Join('\n', SourceFiles.Service.Select(file => file.Text));
        var said = SaidKey().Matches(code).Select(match => match.Groups[1].Value).ToHashSet();
        var literals = Literal().Matches(code).Select(match => match.Groups[1].Value).ToHashSet();
        Assert.True(said.Count > 100, "the keys are looked for in the wrong way");
        Assert.All(said, key => Assert.True(English.ContainsKey(key), key));
        Assert.All(English.Keys, key => Assert.True(literals.Contains(key) || IsMade(key, literals), key));
    }

    /// <summary>Families by value of a closed list, numbers and units, and the keys made of another by an ending.</summary>
    private static bool IsMade(string key, HashSet<string> literals)
    {
        string[] families = ["stage", "job", "progress", "work", "caution", "left", "news", "day", "day-short", "picture.work", "reply.verb", "why", "page.then", "in.as", "room", "plan-change", "outcome", "fails", "role", "exposure", "standing", "surface", "photo", "units", "terrain", "plot-state", "plot-shape", "plot-nudge", "compass", "ladder", "language"];
        var parent = key[..Math.Max(0, key.LastIndexOf('.'))];
        if (families.Contains(parent) && literals.Contains(parent)) return true;
        return parent is "month" or "unit" or "field" || (literals.Contains(parent) && key[(parent.Length + 1)..] is "at" or "title" or "of");
    }

    [Fact]
    public void Words_EveryValueOfAClosedList_HasItsWord() => Assert.All(Enum.GetValues<Language>(), language =>
    {
        var speech = Speeches.Us with { Language = language };
        Assert.All(Enum.GetValues<Core.Stages.Stage>(), stage => Assert.NotEmpty(Words.Of(stage, speech)));
        Assert.All(Enum.GetValues<JobKind>(), kind => Assert.NotEmpty(Words.Of(kind, speech)));
        Assert.All(Enum.GetValues<JobProgress>(), progress => Assert.NotEmpty(Words.Of(progress, speech)));
        Assert.All(Enum.GetValues<WorkClass>(), work => Assert.NotEmpty(Words.Of(work, speech)));
        Assert.All(Enum.GetValues<PhotoRefusal>(), refusal => Assert.NotEmpty(speech.For(refusal).Reason));
        Assert.All(Enum.GetValues<Core.Reminders.Caution>(), caution => Assert.NotEmpty(CautionWords.Of(caution, speech)));
        Assert.All(Enum.GetValues<LeftCause>(), cause => Assert.NotEmpty(LeftWords.Of(cause, speech)));
        Assert.All(Enum.GetValues<Core.Reminders.PlanNewsKind>(), kind => Assert.NotEmpty(speech.Word("news", kind, ("count", 1), ("jobs", "x"))));
        Assert.All(Books.MaterialUnitNames, unit => Assert.True(speech.Has($"unit.{unit}"), unit));
        Assert.All(Enumerable.Range(1, 12), month => Assert.NotEmpty(speech.Say($"month.{month}")));
        Assert.All(Enum.GetValues<IsoDayOfWeek>().Where(day => day != IsoDayOfWeek.None), day => Assert.NotEmpty(speech.Word("day", day) + speech.Word("day-short", day)));
    });

    /// <summary>The one sentence that says "safe" denies it.</summary>
    [Theory, MemberData(nameof(Languages))]
    public void Words_EachLanguage_NeverSaysSafe(Language language)
    {
        var list = WordList.Of(language);
        var regex = language == Language.Spanish ? SafeInSpanish() : SafeInEnglish();
        var texts = list.Texts.Where(pair => pair.Key != "sheet.no-promise").Select(pair => pair.Value).Concat(list.Catalogue.Values);
        Assert.All(texts, text => Assert.DoesNotMatch(regex, text));
        Assert.Matches(language == Language.Spanish ? "^Nada .* dice que" : "^Nothing .* says that", list.Texts["sheet.no-promise"]);
    }

    /// <summary>A language that was left half in English shows by its smallest words.</summary>
    [Fact]
    public void Words_Spanish_HoldsNoEnglish()
    {
        var list = WordList.Of(Language.Spanish);
        Assert.All(list.Texts.Values.Concat(list.Catalogue.Values), text => Assert.DoesNotMatch(@"(?i)\b(the|and|of|is|by|to|with|work|from|garden)\b(?!\})", text));
    }

    [Fact]
    public void Catalogue_InSpanish_HasEachTextThatGardenersRead()
    {
        var spanish = WordList.Of(Language.Spanish).Catalogue;
        var read = Catalogue.Own.Kinds.Values
            .SelectMany(kind => kind.Jobs.SelectMany(job => job.Materials.Select(need => need.Material).Append(job.Caution!).Append(job.Fallback!)).Append(kind.Caution!))
            .Concat(Catalogue.Own.Crops.Values.Select(crop => crop.Words))
            .Where(text => text is not null).ToHashSet();
        Assert.Empty(read.Except(spanish.Keys));
        Assert.All(
            spanish.Keys.Except(read),
            own => Assert.True(
                own is "garden twine" or "concrete block" || own.StartsWith("It has rooted", StringComparison.Ordinal) || own == "leave it as it stands"
                || OfficialName().IsMatch(own),
                $"'{own}' stands for nothing"));
    }

    /// <summary>
    /// Where texts for people are made, none stands in the code: a literal with two words in it is a key, a unit or markup, or is
    /// named here.
    /// </summary>
    [Fact]
    public void Code_WhereTextsAreMade_HoldsNoText()
    {
        var rooms = SourceFiles.Service.Where(file => Room().IsMatch(file.Path));
        var found = from file in rooms
                    where !Markup().IsMatch(file.Path)
                    from literal in SourceFiles.LiteralsOf(file)
                    where TwoWords().IsMatch(literal)
                    select literal;
        Assert.Equal(
            [
                "-//StormClock//Garden storm plan//EN", // names the program to other programs (RFC 5545 3.7.3)
                "An empty calendar was stored.", // of an exception
                "DejaVu Sans Condensed",
            ],
            found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Pages_BetweenTheirTags_HoldNoText()
    {
        var found = from file in SourceFiles.Service
                    where file.Path.EndsWith(".razor", StringComparison.Ordinal)
                    from text in SourceFiles.TextsOf(file)
                    select $"{file.Path}: {text}";
        Assert.Empty(found);
    }

    private static IEnumerable<string> Cases(string text) => Case().Matches(text).Select(match => match.Value);

    [GeneratedRegex(@"\w+, plural|\b(one|other) (?=\{)")]
    private static partial Regex Case();

    [GeneratedRegex(@"\b(segur[oa]s?|seguramente|seguridad|a salvo|sin (peligro|riesgo)|fuera de peligro)\b", RegexOptions.IgnoreCase)]
    public static partial Regex SafeInSpanish();

    [GeneratedRegex(@"\bsafe(ly|ty|r|st)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex SafeInEnglish();

    [GeneratedRegex(@"\bSay\(\s*""([^""]+)""")]
    private static partial Regex SaidKey();

    [GeneratedRegex(@"""([a-z][^""\s{}]*)""")]
    private static partial Regex Literal();

    [GeneratedRegex(@" (Warning|Watch|Advisory|Immediate)$|^Evacuation")]
    private static partial Regex OfficialName();

    [GeneratedRegex(@"^(Messages|Sheets|Pictures|Calendars)/|^Web/(Notices|StormPages|\w+Endpoints)\.cs$")]
    private static partial Regex Room();

    [GeneratedRegex(@"(HtmlForm|SvgForm|WebhookBody)\.cs$")]
    private static partial Regex Markup();

    [GeneratedRegex(@"[A-Za-z]{2,} [A-Za-z]{2,}")]
    private static partial Regex TwoWords();

    private static class Books
    {
        public static IEnumerable<string> MaterialUnitNames => Service.Books.MaterialUnits.All.Values.Select(unit => unit.Stored).Distinct();
    }
}
