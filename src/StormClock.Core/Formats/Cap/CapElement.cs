using System.Xml;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.Cap;

/// <summary>An element with its children of the same namespace, whose texts come trimmed.</summary>
internal sealed class CapElement
{
    private static readonly List<CapElement> None = [];

    private readonly string name;
    private readonly int line;
    private List<CapElement> children = None;
    private string own = "";

    private CapElement(XmlReader reader)
    {
        name = reader.LocalName;
        line = reader.Line();
    }

    /// <summary>
    /// The element the reader stands on; leaves the reader on its end. Elements of other namespaces, as in signatures, and
    /// resources, which may carry sound and pictures, are passed over.
    /// </summary>
    public static CapElement Read(XmlReader reader)
    {
        var element = new CapElement(reader);
        var (depth, space) = (reader.Depth, reader.NamespaceURI);
        if (reader.IsEmptyElement) return element;
        while (reader.Step() && reader.Depth > depth)
        {
            if (reader.NodeType == XmlNodeType.Element)
            {
                if (reader.NamespaceURI == space && reader.LocalName != "resource") element.Add(Read(reader));
                else PassOver(reader);
            }
            else if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
            {
                element.own = element.own.Length == 0 ? reader.Value : element.own + reader.Value;
            }
        }

        element.own = element.own.Trim();
        return element;
    }

    /// <summary>The text of the first such child, "" when there is none.</summary>
    public string Text(string child) => First(child)?.own ?? "";

    public IEnumerable<string> Texts(string child) => All(child).Select(one => one.own);

    public IEnumerable<CapElement> All(string child) => children.Where(one => one.name == child);

    /// <summary>A word of a list, null when it is none of it.</summary>
    public T? Word<T>(string child)
        where T : struct, Enum => WordOf<T>(Text(child));

    public static T? WordOf<T>(string text)
        where T : struct, Enum =>
        text.Length > 0 && char.IsLetter(text[0]) && Enum.TryParse<T>(text, ignoreCase: true, out var word) && Enum.IsDefined(word) ? word : null;

    public Instant? Time(string child) => CapTime.Parse(Text(child));

    /// <summary>Children with valueName and value, as geocode, parameter and eventCode have them; in CAP 1.0 the text "name=value".</summary>
    public IReadOnlyList<AlertGeocode> Named(string child)
    {
        var named = new List<AlertGeocode>();
        foreach (var one in children)
        {
            if (one.name == child) one.AddNamed(named);
        }

        return named;
    }

    public ReadFault Fault(string child, string reason) => new($"{name}/{child}", reason, First(child)?.line ?? line);

    /// <summary>Some senders put several pairs of name and value into one element.</summary>
    private void AddNamed(List<AlertGeocode> named)
    {
        var scheme = "";
        foreach (var part in children)
        {
            if (part.name == "valueName") scheme = part.own;
            if (part.name == "value") named.Add(new AlertGeocode(scheme, part.own));
        }

        var equals = own.IndexOf('=', StringComparison.Ordinal);
        if (children.Count == 0 && equals >= 0) named.Add(new AlertGeocode(own[..equals].Trim(), own[(equals + 1)..].Trim()));
    }

    private CapElement? First(string child) => children.Find(one => one.name == child);

    private void Add(CapElement child)
    {
        if (children.Count == 0) children = [];
        children.Add(child);
    }

    private static void PassOver(XmlReader reader)
    {
        var depth = reader.Depth;
        if (reader.IsEmptyElement) return;
        while (reader.Step() && reader.Depth > depth) { }
    }
}
