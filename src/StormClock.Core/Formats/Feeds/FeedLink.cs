namespace StormClock.Core.Formats.Feeds;

internal static class FeedLink
{
    /// <summary>A link of the web, or one relative to the list; null for anything else.</summary>
    public static Uri? Parse(string text)
    {
        if (text.Length == 0) return null;
        if (text.StartsWith("http://", StringComparison.OrdinalIgnoreCase) || text.StartsWith("https://", StringComparison.OrdinalIgnoreCase))
        {
            return Uri.TryCreate(text, UriKind.Absolute, out var web) ? web : null;
        }

        var beginning = text.IndexOfAny(['/', '?', '#', ':']);
        var hasScheme = beginning >= 0 && text[beginning] == ':';
        return !hasScheme && Uri.TryCreate(text, UriKind.Relative, out var relative) ? relative : null;
    }
}
