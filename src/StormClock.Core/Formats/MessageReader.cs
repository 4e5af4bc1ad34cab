using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Formats.Notes;
using StormClock.Core.Formats.WindProbabilities;

namespace StormClock.Core.Formats;

/// <summary>Bytes from anywhere to an advisory: looks at the beginning and hands over to the reader that fits.</summary>
public static class MessageReader
{
    public static ReadResult<Advisory> Read(ReadOnlyMemory<byte> bytes)
    {
        if (AlertFeatureReader.IsAlert(bytes.Span)) return AsAdvisory(AlertFeatureReader.Read(bytes));
        if (JsonText.IsObject(bytes.Span)) return AsAdvisory(NoteReader.Read(bytes));
        var kind = KnownProduct.Of(bytes.Span);
        if (kind == ProductKind.HtmlPage && BulletinOf(bytes.Span) is { } bulletin) return Read(bulletin);
        return kind switch
        {
            ProductKind.ForecastAdvisory => AsAdvisory(ForecastAdvisoryReader.Read(bytes)),
            ProductKind.WindSpeedProbabilities => AsAdvisory(WindProbabilityReader.Read(bytes)),
            ProductKind.CapAlert or ProductKind.OtherXml => AsAdvisory(CapReader.Read(bytes)),
            _ => ReadFault.At(1, $"this is {KnownProduct.NameOf(kind)}; a text of a forecast/advisory or of wind speed probabilities, or a CAP alert, can be read"),
        };
    }

    /// <summary>The text of a product that a centre shows on a page; null when there is none. Larger pages are not searched.</summary>
    private static byte[]? BulletinOf(ReadOnlySpan<byte> page)
    {
        if (page.Length > CapReader.MostBytes || SourceText.Decode(page) is not { } html || PreText.Of(html) is not { } text) return null;
        var bytes = Encoding.UTF8.GetBytes(text);
        return KnownProduct.Of(bytes) is ProductKind.HtmlPage or ProductKind.Empty or ProductKind.Unknown ? null : bytes;
    }

    private static ReadResult<Advisory> AsAdvisory<T>(ReadResult<T> result)
        where T : Advisory =>
        result.Value is { } value ? ReadResult.Good<Advisory>(value) : ReadResult.Bad<Advisory>(result.Faults);
}
