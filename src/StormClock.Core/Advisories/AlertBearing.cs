namespace StormClock.Core.Advisories;

/// <summary>What an alert means for a garden, as far as its event, its codes and the response it asks for tell.</summary>
public enum AlertBearing
{
    Other,
    TropicalStormWatch,
    TropicalStormWarning,
    HurricaneWatch,
    HurricaneWarning,

    /// <summary>Warning of wind without a tropical cyclone: high wind, gale, storm, severe thunderstorm, tornado.</summary>
    WindWarning,

    /// <summary>Warning (no watch or advisory) of flood, flash flood, coastal flood or storm surge.</summary>
    Flood,

    Evacuate,
    Shelter,
}

/// <summary>Reads the bearing out of an alert's words and codes.</summary>
public static class AlertBearings
{
    /// <summary>From the strongest down; watches of the stronger wind stand below warnings of the weaker (science.md 4.1).</summary>
    private static readonly AlertBearing[] StrongestFirst =
    [
        AlertBearing.Evacuate, AlertBearing.Shelter, AlertBearing.HurricaneWarning, AlertBearing.TropicalStormWarning,
        AlertBearing.HurricaneWatch, AlertBearing.TropicalStormWatch, AlertBearing.WindWarning, AlertBearing.Flood,
        AlertBearing.Other,
    ];

    /// <summary>Event codes of SAME and of the US weather service (M); watches and advisories of wind and flood are left out on purpose.</summary>
    private static readonly Dictionary<string, AlertBearing> Codes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["EVI"] = AlertBearing.Evacuate,
        ["SPW"] = AlertBearing.Shelter,
        ["HUW"] = AlertBearing.HurricaneWarning,
        ["TYW"] = AlertBearing.HurricaneWarning,
        ["HUA"] = AlertBearing.HurricaneWatch,
        ["TYA"] = AlertBearing.HurricaneWatch,
        ["TRW"] = AlertBearing.TropicalStormWarning,
        ["TRA"] = AlertBearing.TropicalStormWatch,
        ["HWW"] = AlertBearing.WindWarning,
        ["EWW"] = AlertBearing.WindWarning,
        ["GLW"] = AlertBearing.WindWarning,
        ["SRW"] = AlertBearing.WindWarning,
        ["SVR"] = AlertBearing.WindWarning,
        ["TOR"] = AlertBearing.WindWarning,
        ["FFW"] = AlertBearing.Flood,
        ["FLW"] = AlertBearing.Flood,
        ["FAW"] = AlertBearing.Flood,
        ["CFW"] = AlertBearing.Flood,
        ["SSW"] = AlertBearing.Flood,
    };

    /// <summary>SAME codes of tests and demonstrations, which some senders issue as Actual.</summary>
    private static readonly HashSet<string> TestCodes = new(StringComparer.OrdinalIgnoreCase) { "RWT", "RMT", "NPT", "NST", "NAT", "DMO" };

    /// <summary>
    /// The bearing of one info. An order to leave or to shelter outranks whatever the event is, with one exception: a tropical
    /// watch or warning is issued a day or two ahead, and its "shelter" speaks of the hours of the wind, not of now.
    /// </summary>
    public static AlertBearing Of(AlertInfo info)
    {
        if (IsTest(info)) return AlertBearing.Other;
        if (info.Responses.Contains(AlertResponse.Evacuate)) return AlertBearing.Evacuate;
        var ofEvent = OfEvent(info);
        return info.Responses.Contains(AlertResponse.Shelter) && !IsTropical(ofEvent) ? AlertBearing.Shelter : ofEvent;
    }

    public static AlertBearing Strongest(IEnumerable<AlertBearing> bearings)
    {
        var all = bearings.ToHashSet();
        return StrongestFirst.First(bearing => bearing == AlertBearing.Other || all.Contains(bearing));
    }

    private static AlertBearing OfEvent(AlertInfo info)
    {
        var byCode = info.EventCodes.Where(IsKnownScheme).Select(code => Codes.GetValueOrDefault(code.Code));
        return Strongest(byCode.Append(OfName(info.Event)));
    }

    private static AlertBearing OfName(string name)
    {
        var warning = Has(name, "warning");
        var watch = !warning && Has(name, "watch");
        if (Has(name, "evacuation")) return AlertBearing.Evacuate;
        if (Has(name, "shelter in place")) return AlertBearing.Shelter;
        if (!warning && !watch) return Has(name, "flood emergency") ? AlertBearing.Flood : AlertBearing.Other;
        if (Has(name, "tropical storm")) return warning ? AlertBearing.TropicalStormWarning : AlertBearing.TropicalStormWatch;
        if ((Has(name, "hurricane") || Has(name, "typhoon")) && !Has(name, "force wind"))
        {
            return warning ? AlertBearing.HurricaneWarning : AlertBearing.HurricaneWatch;
        }

        if (watch) return AlertBearing.Other;
        if (Has(name, "flood") || Has(name, "storm surge")) return AlertBearing.Flood;
        return SaysWind(name) ? AlertBearing.WindWarning : AlertBearing.Other;
    }

    /// <summary>"Wind Chill Warning" and "Winter Storm Warning" are no warnings of wind.</summary>
    private static bool SaysWind(string name) =>
        Has(name, "wind warning") || Has(name, "gale warning") || Has(name, "thunderstorm warning") || Has(name, "tornado warning")
        || name.Trim().Equals("storm warning", StringComparison.OrdinalIgnoreCase);

    private static bool IsTropical(AlertBearing bearing) =>
        bearing is >= AlertBearing.TropicalStormWatch and <= AlertBearing.HurricaneWarning;

    private static bool IsTest(AlertInfo info) =>
        info.EventCodes.Any(code => IsKnownScheme(code) && TestCodes.Contains(code.Code))
        || Has(info.Event, "monthly test") || Has(info.Event, "weekly test") || Has(info.Event, "test message")
        || SaysTest(info.Headline) || SaysTest(info.Description);

    /// <summary>Some senders say only in their words that an alert issued as Actual is none.</summary>
    private static bool SaysTest(string text) =>
        Has(text, "this is a test") || Has(text, "for test purposes only") || Has(text, "for_test_purposes_only");

    private static bool IsKnownScheme(AlertGeocode code) =>
        code.Scheme.Equals("SAME", StringComparison.OrdinalIgnoreCase) || Has(code.Scheme, "NationalWeatherService");

    private static bool Has(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);
}
