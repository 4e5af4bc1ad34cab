using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>What a weather station measured at one moment; null where it gives no value or the value failed the office's checks.</summary>
/// <param name="Station">Identifier of the station, e.g. <c>KFLL</c>.</param>
/// <param name="At">Where the station stands; null when not told.</param>
/// <param name="WindMps">Sustained (2-min mean at most US stations, M).</param>
/// <param name="GustMps">Peak gust; stations give none when the wind is even.</param>
public sealed record Observation(string Station, GeoPoint? At, Instant MeasuredAt, double? WindMps, double? GustMps) : Advisory
{
    public override string Id => $"observation/{Station}/{MeasuredAt:uuuu-MM-dd'T'HH:mm:ss'Z'}";

    public override Instant Issued => MeasuredAt;

    public override string Title => $"observation at {Station}";
}
