using System.Text;
using System.Xml;

namespace StormClock.Core.Formats.Feeds;

/// <summary>The namespaces that an element uses but that are declared around it, so that it cannot stand alone without them.</summary>
internal sealed class MissingNamespaces
{
    private readonly Dictionary<string, string> around;
    private readonly SortedSet<string> used = new(StringComparer.Ordinal);

    /// <param name="reader">On the element.</param>
    public MissingNamespaces(XmlReader reader)
    {
        var scope = (IXmlNamespaceResolver)reader;
        var own = scope.GetNamespacesInScope(XmlNamespaceScope.Local);
        around = scope.GetNamespacesInScope(XmlNamespaceScope.ExcludeXml).Where(one => !own.ContainsKey(one.Key)).ToDictionary(StringComparer.Ordinal);
        Note(reader);
    }

    public bool Any => used.Count > 0;

    /// <summary>Takes down what a node within it uses.</summary>
    public void Note(XmlReader reader)
    {
        if (around.Count == 0 || reader.NodeType != XmlNodeType.Element) return;
        NoteName(reader);
        for (var more = reader.MoveToFirstAttribute(); more; more = reader.MoveToNextAttribute())
        {
            if (reader.Prefix.Length > 0) NoteName(reader);
        }

        reader.MoveToElement();
    }

    /// <summary>The element with the declarations that it lacked.</summary>
    /// <param name="at">Where its name ends.</param>
    public byte[] Added(ReadOnlyMemory<byte> element, int at)
    {
        var declarations = string.Concat(used.Select(prefix => $" xmlns{(prefix.Length > 0 ? ":" : "")}{prefix}=\"{Escaped(around[prefix])}\""));
        return [.. element.Span[..at], .. Encoding.UTF8.GetBytes(declarations), .. element.Span[at..]];
    }

    private void NoteName(XmlReader reader)
    {
        if (around.TryGetValue(reader.Prefix, out var space) && space == reader.NamespaceURI) used.Add(reader.Prefix);
    }

    private static string Escaped(string uri) =>
        uri.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);
}
