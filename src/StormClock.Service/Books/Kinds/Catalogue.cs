using System.Text;
using StormClock.Core.Garden;

namespace StormClock.Service.Books.Kinds;

/// <summary>What is typical of the things and crops of a garden, by token.</summary>
internal sealed record Catalogue(IReadOnlyDictionary<string, ItemKind> Kinds, IReadOnlyDictionary<string, Crop> Crops)
{
    private const string Resource = "kinds.yaml";

    private static readonly Lazy<Catalogue> Embedded = new(() => Load(OwnText()));

    /// <summary>The one that comes with the program, read once.</summary>
    public static Catalogue Own => Embedded.Value;

    /// <summary>The text it is read from.</summary>
    public static string OwnText()
    {
        using var stream = typeof(Catalogue).Assembly.GetManifestResourceStream(Resource) ?? throw new InvalidOperationException($"The program was built without {Resource}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>The gardener cannot mend a file inside the program: a fault in it is a bug.</summary>
    private static Catalogue Load(string text)
    {
        var read = CatalogueReader.Read(text);
        return read.Value ?? throw new InvalidOperationException($"{Resource} is broken: {string.Join("; ", read.Faults)}");
    }
}
