using StormClock.Core.Advisories;

namespace StormClock.Core.Formats.Cap;

/// <summary>One info block: an account of the event in one language.</summary>
internal static class CapInfo
{
    public static AlertInfo Read(CapElement info)
    {
        var parameters = info.Named("parameter");
        return new AlertInfo(
            info.Text("language"),
            info.Text("event"),
            [.. info.Texts("responseType").Select(word => CapElement.WordOf<AlertResponse>(word) ?? AlertResponse.Other)],
            info.Text("urgency"),
            info.Text("severity"),
            info.Text("certainty"),
            info.Time("effective"),
            info.Time("onset"),
            info.Time("expires"),
            EventEnd(parameters),
            info.Text("headline"),
            info.Text("description"),
            info.Text("instruction"),
            parameters,
            [.. info.All("area").Select(Area)])
        {
            EventCodes = info.Named("eventCode"),
        };
    }

    /// <summary>The end of the event itself: the parameter eventEndingTime, else the end in the VTEC code, else unknown.</summary>
    public static Instant? EventEnd(IReadOnlyList<AlertGeocode> parameters)
    {
        var named = parameters.Where(one => Is(one, "eventEndingTime")).Select(one => CapTime.Parse(one.Code)).Max();
        return named ?? CapTime.VtecEnd(string.Join(' ', parameters.Where(one => Is(one, "VTEC")).Select(one => one.Code)));
    }

    private static AlertArea Area(CapElement area) => new(
        area.Text("areaDesc"),
        [.. area.Texts("polygon").Where(text => text.Length > 0).Select(CapShape.Polygon)],
        [.. area.Texts("circle").Where(text => text.Length > 0).Select(CapShape.Circle)],
        area.Named("geocode"));

    private static bool Is(AlertGeocode parameter, string name) => parameter.Scheme.Equals(name, StringComparison.OrdinalIgnoreCase);
}
