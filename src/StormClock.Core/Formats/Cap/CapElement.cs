using System.Xml.Linq;
using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.Cap;

/// <summary>An element with its children of the same namespace, whose texts come trimmed.</summary>
internal sealed class CapElement(XElement element)
{
    /// <summary>The text of the first such child, "" when there is none.</summary>
    public string Text(string name) => element.Element(element.Name.Namespace + name)?.Value.Trim() ?? "";

    public IEnumerable<string> Texts(string name) => All(name).Select(child => child.Own);

    public IEnumerable<CapElement> All(string name) =>
        element.Elements(element.Name.Namespace + name).Select(child => new CapElement(child));

    /// <summary>A word of a list, null when it is none of it.</summary>
    public T? Word<T>(string name)
        where T : struct, Enum => WordOf<T>(Text(name));

    public static T? WordOf<T>(string text)
        where T : struct, Enum =>
        text.Length > 0 && char.IsLetter(text[0]) && Enum.TryParse<T>(text, ignoreCase: true, out var word) && Enum.IsDefined(word) ? word : null;

    public Instant? Time(string name) => CapTime.Parse(Text(name));

    /// <summary>Children with valueName and value, as geocode, parameter and eventCode have them.</summary>
    public IReadOnlyList<AlertGeocode> Named(string name) =>
        [.. All(name).Select(child => new AlertGeocode(child.Text("valueName"), child.Text("value")))];

    public ReadFault Fault(string name, string reason)
    {
        var place = element.Element(element.Name.Namespace + name) ?? element;
        return new ReadFault($"{element.Name.LocalName}/{name}", reason, CapXml.LineOf(place));
    }

    private string Own => element.Value.Trim();
}
