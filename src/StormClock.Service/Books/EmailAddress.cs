namespace StormClock.Service.Books;

internal static class EmailAddress
{
    /// <summary>One bare address without a display name; whether it exists only a message can tell.</summary>
    public static bool IsPlain(string text)
    {
        var at = text.IndexOf('@');
        return at > 0 && at == text.LastIndexOf('@') && at < text.Length - 1 && !text.Any(c => char.IsWhiteSpace(c) || c is '<' or '>' or ',' or ';' or '"');
    }
}
