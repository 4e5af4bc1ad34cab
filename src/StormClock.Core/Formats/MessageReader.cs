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
        if (IsObject(bytes.Span)) return AsAdvisory(NoteReader.Read(bytes));
        var kind = KnownProduct.Of(bytes.Span);
        return kind switch
        {
            ProductKind.ForecastAdvisory => AsAdvisory(ForecastAdvisoryReader.Read(bytes)),
            ProductKind.WindSpeedProbabilities => AsAdvisory(WindProbabilityReader.Read(bytes)),
            ProductKind.CapAlert or ProductKind.OtherXml => AsAdvisory(CapReader.Read(bytes)),
            _ => ReadFault.At(1, $"this is {KnownProduct.NameOf(kind)}; a text of a forecast/advisory or of wind speed probabilities, or a CAP alert, can be read"),
        };
    }

    private static bool IsObject(ReadOnlySpan<byte> bytes) => bytes.TrimStart(" \t\r\n"u8) is [(byte)'{', ..];

    private static ReadResult<Advisory> AsAdvisory<T>(ReadResult<T> result)
        where T : Advisory =>
        result.Value is { } value ? ReadResult.Good<Advisory>(value) : ReadResult.Bad<Advisory>(result.Faults);
}
