namespace StormClock.Core.Formats.LocalStatement;

/// <summary>Names of the events that VTEC lines write in letters (NWS Instruction 10-1703, M).</summary>
internal static class VtecNames
{
    private static readonly Dictionary<string, string> Phenomena = new(StringComparer.Ordinal)
    {
        ["AF"] = "Ashfall", ["AS"] = "Air Stagnation", ["BH"] = "Beach Hazard", ["BS"] = "Blowing Snow", ["BW"] = "Brisk Wind", ["BZ"] = "Blizzard", ["CF"] = "Coastal Flood",
        ["CW"] = "Cold Weather", ["DF"] = "Debris Flow", ["DS"] = "Dust Storm", ["DU"] = "Blowing Dust", ["EC"] = "Extreme Cold", ["EH"] = "Excessive Heat", ["EW"] = "Extreme Wind",
        ["FA"] = "Flood", ["FF"] = "Flash Flood", ["FG"] = "Dense Fog", ["FL"] = "Flood", ["FR"] = "Frost", ["FW"] = "Red Flag", ["FZ"] = "Freeze",
        ["GL"] = "Gale", ["HF"] = "Hurricane Force Wind", ["HT"] = "Heat", ["HU"] = "Hurricane", ["HW"] = "High Wind", ["HY"] = "Hydrologic", ["HZ"] = "Hard Freeze",
        ["IS"] = "Ice Storm", ["LE"] = "Lake Effect Snow", ["LO"] = "Low Water", ["LS"] = "Lakeshore Flood", ["LW"] = "Lake Wind", ["MA"] = "Marine", ["MF"] = "Marine Dense Fog",
        ["RP"] = "Rip Current", ["SC"] = "Small Craft", ["SE"] = "Hazardous Seas", ["SM"] = "Dense Smoke", ["SQ"] = "Snow Squall", ["SR"] = "Storm", ["SS"] = "Storm Surge",
        ["SU"] = "High Surf", ["SV"] = "Severe Thunderstorm", ["TO"] = "Tornado", ["TR"] = "Tropical Storm", ["TS"] = "Tsunami", ["TY"] = "Typhoon", ["UP"] = "Freezing Spray",
        ["WC"] = "Wind Chill", ["WI"] = "Wind", ["WS"] = "Winter Storm", ["WW"] = "Winter Weather", ["XH"] = "Extreme Heat", ["ZF"] = "Freezing Fog", ["ZR"] = "Freezing Rain",
    };

    private static readonly Dictionary<char, string> Significances = new()
    {
        ['W'] = "Warning", ['A'] = "Watch", ['Y'] = "Advisory", ['S'] = "Statement", ['F'] = "Forecast", ['O'] = "Outlook", ['N'] = "Synopsis",
    };

    /// <summary>"Hurricane Warning" for HU.W; letters that are not known stay letters.</summary>
    public static string Of(VtecEvent told)
    {
        var phenomenon = Phenomena.GetValueOrDefault(told.Phenomenon, told.Phenomenon);
        return $"{phenomenon} {Significances.GetValueOrDefault(told.Significance, told.Significance.ToString())}";
    }
}
