using System.Text.RegularExpressions;

namespace StormClock.Core.Formats;

/// <summary>What some bytes are, as far as their first lines tell.</summary>
internal enum ProductKind
{
    Empty,
    Binary,
    HtmlPage,
    CapAlert,
    RssFeed,
    AtomFeed,
    AviationXml,
    OtherXml,
    Json,
    AviationText,
    LocalStatement,
    LocalStatementWithoutCodes,
    SpanishAdvisory,
    ForecastAdvisory,
    WindSpeedProbabilities,
    StrikeProbabilities,
    Discussion,
    PublicAdvisory,
    CycloneUpdate,
    WeatherOutlook,
    Unknown,
}

/// <summary>Tells the products of the warning centres and the wrappers they come in apart, so that a fault can name what came.</summary>
internal static partial class KnownProduct
{
    private const int LinesOfHeading = 20;

    /// <summary>With the version left out.</summary>
    private const string CapNamespace = "urn:oasis:names:tc:emergency:cap:";

    public static ProductKind Of(ReadOnlySpan<byte> bytes)
    {
        var isMarkup = bytes.TrimStart(" \t\r\n"u8) is [(byte)'<', ..];
        var head = Whole(bytes, (isMarkup ? 4 : 16) * 1024);
        return SourceText.Decode(head) is { } text ? OfText(text) : ProductKind.Binary;
    }

    /// <summary>The beginning, which ends between two signs of UTF-8 and not within one.</summary>
    private static ReadOnlySpan<byte> Whole(ReadOnlySpan<byte> bytes, int most)
    {
        if (bytes.Length <= most) return bytes;
        var end = most;
        while (end > most - 3 && (bytes[end] & 0xC0) == 0x80) end--;
        return bytes[..end];
    }

    /// <summary>Texts in words for people, of which nothing can be taken; a list's entry of this sort is no message.</summary>
    public static bool IsProse(ProductKind kind) =>
        kind is ProductKind.Discussion or ProductKind.SpanishAdvisory or ProductKind.CycloneUpdate or ProductKind.WeatherOutlook;

    /// <summary>XML of any kind, but no page for people.</summary>
    public static bool IsMarkup(ProductKind kind) =>
        kind is ProductKind.CapAlert or ProductKind.RssFeed or ProductKind.AtomFeed or ProductKind.OtherXml;

    public static string NameOf(ProductKind kind) => kind switch
    {
        ProductKind.Empty => "an empty file",
        ProductKind.Binary => "binary data",
        ProductKind.HtmlPage => "an HTML page",
        ProductKind.CapAlert => "a CAP alert (XML)",
        ProductKind.RssFeed => "an RSS feed (a list of messages)",
        ProductKind.AtomFeed => "an Atom feed (a list of messages)",
        ProductKind.OtherXml => "an XML document of another kind",
        ProductKind.Json => "JSON",
        ProductKind.AviationXml => "a message of the aviation weather exchange (IWXXM)",
        ProductKind.AviationText => "a tropical cyclone advisory for aviation",
        ProductKind.LocalStatement => "a local statement with VTEC lines",
        ProductKind.LocalStatementWithoutCodes => "a local statement in words without VTEC lines",
        ProductKind.SpanishAdvisory => "a public advisory in Spanish",
        ProductKind.ForecastAdvisory => "a tropical cyclone forecast/advisory",
        ProductKind.WindSpeedProbabilities => "a table of wind speed probabilities",
        ProductKind.StrikeProbabilities => "a table of strike probabilities (PROBABILITIES NUMBER)",
        ProductKind.Discussion => "a tropical cyclone discussion",
        ProductKind.PublicAdvisory => "a public advisory",
        ProductKind.CycloneUpdate => "a tropical cyclone update",
        ProductKind.WeatherOutlook => "a tropical weather outlook",
        _ => "a text of another kind",
    };

    private static ProductKind OfText(string text)
    {
        var start = text.AsSpan().TrimStart();
        if (start.IsEmpty) return ProductKind.Empty;
        if (start[0] == '<') return OfMarkup(text);
        if (start[0] is '{' or '[') return ProductKind.Json;
        return OfHeading(text);
    }

    /// <summary>By the root with its namespaces and what stands before and shortly after it. An alert is known by its root alone: to search on would take longer than to read it.</summary>
    private static ProductKind OfMarkup(string text)
    {
        const int charsOfRoot = 1024;
        var root = RootBegins().Match(text);
        if (root.Groups["alert"].Success && HasCap(text.AsSpan(root.Index))) return ProductKind.CapAlert;
        return OfHead(root.Success ? text[..Math.Min(text.Length, root.Index + charsOfRoot)] : text);
    }

    [GeneratedRegex(@"<(?:(?:[A-Za-z][\w.-]*:)?(?<alert>alert)\s|[A-Za-z])", RegexOptions.CultureInvariant)]
    private static partial Regex RootBegins();

    private static bool HasCap(ReadOnlySpan<char> root)
    {
        var end = root.IndexOf('>');
        return (end < 0 ? root : root[..end]).Contains(CapNamespace, StringComparison.Ordinal);
    }

    private static ProductKind OfHead(string text)
    {
        if (Has(text, "<html") || Has(text, "<!doctype html")) return ProductKind.HtmlPage;
        if (Has(text, "<rss")) return ProductKind.RssFeed;
        if (Has(text, "http://www.w3.org/2005/Atom")) return ProductKind.AtomFeed;
        if (Has(text, AviationAdvisory.IwxxmReader.Namespace)) return ProductKind.AviationXml;
        return Has(text, CapNamespace) ? ProductKind.CapAlert : ProductKind.OtherXml;
    }

    private static ProductKind OfHeading(string text)
    {
        var first = SourceText.Lines(text).Where(line => line.Length > 0).Take(LinesOfHeading);
        var heading = string.Join(' ', string.Join(' ', first).Split(' ', StringSplitOptions.RemoveEmptyEntries));

        if (Has(heading, "TC ADVISORY") && Has(heading, "TCAC:")) return ProductKind.AviationText;
        if (HasVtec(text)) return ProductKind.LocalStatement;
        if (Has(heading, "LOCAL STATEMENT")) return ProductKind.LocalStatementWithoutCodes;
        if (Has(heading, "ADVERTENCIA") && Has(heading, "NUMERO")) return ProductKind.SpanishAdvisory;
        if (Has(heading, "WIND SPEED PROBABILITIES NUMBER")) return ProductKind.WindSpeedProbabilities;
        if (Has(heading, "PROBABILITIES NUMBER")) return ProductKind.StrikeProbabilities;
        if (Has(heading, "DISCUSSION NUMBER")) return ProductKind.Discussion;
        if (Has(heading, "FORECAST/ADVISORY NUMBER") || Has(heading, "MARINE ADVISORY NUMBER")) return ProductKind.ForecastAdvisory;
        if (Has(heading, "TROPICAL CYCLONE UPDATE")) return ProductKind.CycloneUpdate;
        if (Has(heading, "TROPICAL WEATHER OUTLOOK")) return ProductKind.WeatherOutlook;
        if (!Has(heading, "ADVISORY NUMBER")) return ProductKind.Unknown;

        // The bulletins for the public carry the same title as the old central Pacific forecast/advisory, which alone
        // says REPEAT and gives its points in degrees and tenths with a letter.
        return Has(heading, "BULLETIN") || !Has(heading, "CENTER LOCATED NEAR")
            ? ProductKind.PublicAdvisory
            : ProductKind.ForecastAdvisory;
    }

    private static bool HasVtec(string text) =>
        SourceText.Lines(text).Any(LocalStatement.VtecEvent.LooksLike);

    private static bool Has(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);
}
