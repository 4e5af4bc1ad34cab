namespace StormClock.Service.Books;

/// <summary>Turns away what is no YAML text at all, with a plainer word than the parser would have.</summary>
internal static class YamlGate
{
    /// <summary>A garden of a thousand items stays under a third of this.</summary>
    private const int MostCharacters = 1_000_000;

    /// <returns>False, with the reason in <paramref name="faults"/>, for what is no YAML text.</returns>
    public static bool Passes(string text, FaultList faults)
    {
        if (text.Length > MostCharacters)
        {
            faults.Add(1, $"the file has {text.Length} characters, more than {MostCharacters}; split it into one file a garden");
            return false;
        }

        if (text.TrimStart().StartsWith('<'))
        {
            faults.Add(1, "this is HTML or XML, not YAML; save the plain YAML file instead");
            return false;
        }

        if (FirstControl(text) is var odd and >= 0)
        {
            faults.Add(LineAt(text, odd), "this is a binary file or holds control characters; save it as plain UTF-8 text");
            return false;
        }

        return !HasTabs(text, faults);
    }

    internal static int FirstControl(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if ((char.IsControl(text[i]) && text[i] is not ('\t' or '\n' or '\r' or '\u0085')) || text[i] == '\uFFFD') return i;
        }

        return -1;
    }

    internal static int LineAt(string text, int position) => text.AsSpan(0, position).Count('\n') + 1;

    /// <summary>Tabs used as indentation are the commonest slip and the parser's word on them is obscure.</summary>
    private static bool HasTabs(string text, FaultList faults)
    {
        var found = false;
        var number = 0;
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            number++;
            var indent = line[..^line.TrimStart().Length];
            if (line.Length == indent.Length || !indent.Contains('\t')) continue;

            faults.Add(number, "a tab is used for indentation; YAML takes spaces only");
            found = true;
        }

        return found;
    }
}
