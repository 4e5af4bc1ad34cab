using System.Text.RegularExpressions;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Wording;

/// <summary>The source text of the service, for tests that look for texts in it.</summary>
internal static partial class SourceFiles
{
    private static readonly string Root = Path.Combine(ConfigFiles.Folder, "..", "src", "StormClock.Service");

    /// <summary>Paths with slashes from the project's folder; remarks are taken out.</summary>
    public static IReadOnlyList<(string Path, string Text)> Service { get; } =
    [
        .. from path in Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories)
           where path.EndsWith(".cs", StringComparison.Ordinal) || path.EndsWith(".razor", StringComparison.Ordinal)
           let name = System.IO.Path.GetRelativePath(Root, path).Replace('\\', '/')
           where !name.StartsWith("obj/", StringComparison.Ordinal) && !name.StartsWith("bin/", StringComparison.Ordinal)
           select (name, Remark().Replace(File.ReadAllText(path), "")),
    ];

    /// <summary>What stands in quotes, without what is put in at run time.</summary>
    public static IEnumerable<string> LiteralsOf((string Path, string Text) file) =>
        Quoted().Matches(Inserted().Replace(file.Text, "{}")).Select(match => match.Groups[1].Value);

    /// <summary>What a page says between its tags by itself.</summary>
    public static IEnumerable<string> TextsOf((string Path, string Text) page)
    {
        var markup = page.Text[..(page.Text.IndexOf("@code {", StringComparison.Ordinal) is var code and >= 0 ? code : page.Text.Length)];
        return BetweenTags().Matches(PageRemark().Replace(markup, "")).Select(match => match.Groups[1].Value.Trim()).Where(text => Letters().IsMatch(text) && !text.StartsWith('@'));
    }

    [GeneratedRegex(@"^\s*//.*$|(?<=[;{,] )// .*$", RegexOptions.Multiline)]
    private static partial Regex Remark();

    [GeneratedRegex(@"@\*.*?\*@", RegexOptions.Singleline)]
    private static partial Regex PageRemark();

    [GeneratedRegex(@"""((?:[^""\\\n]|\\.)*)""")]
    private static partial Regex Quoted();

    /// <summary>The places of an interpolated text, which may hold quotes of their own.</summary>
    [GeneratedRegex(@"(?<=\$""[^""\n]*)\{[^{}]*(\{[^{}]*\}[^{}]*)*\}")]
    private static partial Regex Inserted();

    [GeneratedRegex(@">([^<>{}]+)</(p|h1|h2|h3|summary|strong|button|label|a|li)>")]
    private static partial Regex BetweenTags();

    [GeneratedRegex("[A-Za-z]{2}")]
    private static partial Regex Letters();
}
