using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.AviationAdvisory;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Formats.Json;
using StormClock.Core.Formats.LocalStatement;
using StormClock.Core.Formats.PublicAdvisory;
using StormClock.Core.Formats.WindProbabilities;

namespace StormClock.Core.Formats;

/// <summary>Bytes from anywhere to advisories: looks at the beginning and hands over to the reader that fits.</summary>
public static class MessageReader
{
    /// <summary>The one message that the bytes hold. A text that holds several is refused here; see <see cref="ReadAll"/>.</summary>
    public static ReadResult<Advisory> Read(ReadOnlyMemory<byte> bytes)
    {
        var all = ReadAll(bytes);
        if (all.Value is not { } messages) return ReadResult.Bad<Advisory>(all.Faults);
        return messages.Count == 1
            ? ReadResult.Good(messages[0])
            : ReadFault.At(1, $"holds {messages.Count} messages, where one was expected");
    }

    /// <summary>Every message that the bytes hold, at least one: a local statement tells of several events, a list of observations of several moments.</summary>
    public static ReadResult<IReadOnlyList<Advisory>> ReadAll(ReadOnlyMemory<byte> bytes)
    {
        if (AlertFeatureReader.IsAlert(bytes.Span)) return AlertFeatureReader.Read(bytes).AsList();
        if (JsonText.IsObject(bytes.Span)) return JsonMessageReader.Read(bytes);
        var kind = KnownProduct.Of(bytes.Span);
        if (kind == ProductKind.HtmlPage && BulletinOf(bytes.Span) is { } bulletin) return ReadAll(bulletin);
        return kind switch
        {
            ProductKind.ForecastAdvisory => ForecastAdvisoryReader.Read(bytes).AsList(),
            ProductKind.WindSpeedProbabilities => WindProbabilityReader.Read(bytes).AsList(),
            ProductKind.PublicAdvisory => PublicAdvisoryReader.Read(bytes).AsList(),
            ProductKind.LocalStatement => LocalStatementReader.Read(bytes),
            ProductKind.AviationText => AviationTextReader.Read(bytes).AsList(),
            ProductKind.AviationXml => IwxxmReader.Read(bytes).AsList(),
            ProductKind.CapAlert or ProductKind.OtherXml => CapReader.Read(bytes).AsList(),
            _ => ReadFault.At(1, $"this is {KnownProduct.NameOf(kind)}; give a cyclone advisory or its wind speed probabilities, a local statement with VTEC lines, a point forecast or a CAP alert"),
        };
    }

    /// <summary>The text of a product that a centre shows on a page; null when there is none. Larger pages are not searched.</summary>
    private static byte[]? BulletinOf(ReadOnlySpan<byte> page)
    {
        if (page.Length > CapReader.MostBytes || SourceText.Decode(page) is not { } html || PreText.Of(html) is not { } text) return null;
        var bytes = Encoding.UTF8.GetBytes(text);
        return KnownProduct.Of(bytes) is ProductKind.HtmlPage or ProductKind.Empty or ProductKind.Unknown ? null : bytes;
    }
}
