using System.Globalization;
using System.Text.RegularExpressions;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Units;

namespace StormClock.Core.Formats.AviationAdvisory;

/// <summary>Reads the text form of a tropical cyclone advisory for aviation: a key, a colon and a value on each line.</summary>
internal static partial class AviationTextReader
{
    private const int MostBytes = 64 * 1024;

    public static ReadResult<CycloneAdvisory> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes) return new ReadFault("the file", $"is larger than {MostBytes / 1024} KB, so it is no advisory for aviation", 1);
        return SourceText.Decode(bytes.Span) is { } text
            ? ReadFields(Fields(SourceText.Lines(text)))
            : ReadFault.At(1, "there is binary data in the text; fetch it again");
    }

    private static ReadResult<CycloneAdvisory> ReadFields(IReadOnlyDictionary<string, Field> fields)
    {
        if (fields.TryGetValue("STATUS", out var status)) return status.Fault($"marked {status.Value}; only advisories that are no test or exercise are read");
        var faults = new List<ReadFault>();
        var dtg = Needed(fields, "DTG", Dtg(), "a time such as 20040925/1900Z", faults);
        var name = Needed(fields, "TC", Word(), "a name", faults);
        var centre = Needed(fields, "TCAC", Word(), "the letters of a centre", faults);
        var number = Needed(fields, "ADVISORY NR", Number(), "a number such as 2004/13", faults);
        var observed = Needed(fields, "OBS PSN", Position(), "a time and a position such as 25/1800Z N2706 W07306", faults);
        if (faults.Count > 0 || dtg is null || name is null || centre is null || number is null || observed is null) return ReadResult.Bad<CycloneAdvisory>(faults);
        if (IssuedOf(dtg) is not { } issued) return fields["DTG"].Fault("the day or the hour does not exist");

        var now = Point(observed, fields["OBS PSN"], fields.GetValueOrDefault("MAX WIND"), issued, faults);
        var forecast = fields.Where(field => field.Key.StartsWith("FCST PSN", StringComparison.Ordinal)).Select(field => Forecast(field, fields, issued, faults)).OfType<AviationPoint>().ToList();
        if (faults.Count > 0 || now is null) return ReadResult.Bad<CycloneAdvisory>(faults);
        return new AviationDraft(centre.Value, name.Value, number.Groups["number"].Value.TrimStart('0'), issued, now, forecast, Corrected: false).Finish();
    }

    /// <summary>Null with no fault where the centre gives no position (NIL, DISSIPATED).</summary>
    private static AviationPoint? Forecast(KeyValuePair<string, Field> psn, IReadOnlyDictionary<string, Field> fields, Instant issued, List<ReadFault> faults)
    {
        if (!Digits().IsMatch(psn.Value.Value)) return null;
        var wind = fields.GetValueOrDefault(psn.Key.Replace("PSN", "MAX WIND", StringComparison.Ordinal));
        if (Position().Match(psn.Value.Value) is { Success: true } match) return Point(match, psn.Value, wind, issued, faults);
        faults.Add(psn.Value.Fault("is no time and position such as 25/2200Z N2748 W07350"));
        return null;
    }

    private static AviationPoint? Point(Match position, Field where, Field? wind, Instant issued, List<ReadFault> faults)
    {
        var speed = wind is null ? null : Wind().Match(wind.Value);
        var (lat, lon) = (Degrees(position, "lat"), Degrees(position, "lon"));
        if (AdvisoryTime.Nearest(Whole(position, "day"), Whole(position, "time"), issued) is not { } valid) faults.Add(where.Fault("the day or the hour does not exist"));
        else if (lat is not <= 90 || lon is not <= 180) faults.Add(where.Fault("the position is not on the globe"));
        else if (speed is { Success: false } && Digits().IsMatch(wind!.Value)) faults.Add(wind.Fault("is no wind such as 22MPS or 43KT"));
        else return new AviationPoint(valid, new GeoPoint(position.Groups["ns"].Value == "S" ? -lat.Value : lat.Value, position.Groups["ew"].Value == "W" ? -lon.Value : lon.Value), KnotsOf(speed));
        return null;
    }

    private static double? KnotsOf(Match? speed)
    {
        if (speed is not { Success: true }) return null;
        return speed.Groups["unit"].Value == "KT" ? Whole(speed, "speed") : Units.Wind.MpsToKt(Whole(speed, "speed"));
    }

    /// <summary>Whole degrees and two digits of minutes; null when the minutes do not exist.</summary>
    private static double? Degrees(Match match, string group)
    {
        var minutes = match.Groups[group + "min"].Success ? Whole(match, group + "min") : 0;
        return minutes < 60 ? Whole(match, group) + minutes / 60.0 : null;
    }

    private static Instant? IssuedOf(Match dtg)
    {
        var (year, month, day, time) = (Whole(dtg, "year"), Whole(dtg, "month"), Whole(dtg, "day"), Whole(dtg, "time"));
        if (year is < 1950 or > 2999 || month is < 1 or > 12 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(year, month) || time / 100 > 23 || time % 100 > 59) return null;
        return Instant.FromUtc(year, month, day, time / 100, time % 100);
    }

    private static Match? Needed(IReadOnlyDictionary<string, Field> fields, string key, Regex pattern, string form, List<ReadFault> faults)
    {
        if (!fields.TryGetValue(key, out var field)) faults.Add(ReadFault.At(1, $"the line {key}: is missing"));
        else if (pattern.Match(field.Value) is { Success: true } match) return match;
        else faults.Add(field.Fault($"is not {form}"));
        return null;
    }

    /// <summary>The first line of each key counts; what has no key goes on from the line above.</summary>
    private static Dictionary<string, Field> Fields(string[] lines)
    {
        var fields = new Dictionary<string, Field>(StringComparer.Ordinal);
        for (var i = 0; i < lines.Length; i++)
        {
            if (KeyLine().Match(lines[i]) is { Success: true } line) fields.TryAdd(KeyOf(line), new(KeyOf(line), line.Groups["value"].Value, i + 1));
        }

        return fields;
    }

    /// <summary>"FCST PSN +06 HR" and "FCST PSN +6 HR" are one.</summary>
    private static string KeyOf(Match line) => string.Join(' ', line.Groups["key"].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Replace("+0", "+", StringComparison.Ordinal);

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<key>[A-Z][A-Z +0-9]{0,30}?)\s*:\s*(?<value>.{0,200})$", RegexOptions.CultureInvariant)]
    private static partial Regex KeyLine();

    [GeneratedRegex(@"^(?<year>[0-9]{4})(?<month>[0-9]{2})(?<day>[0-9]{2})/(?<time>[0-9]{4})Z$", RegexOptions.CultureInvariant)]
    private static partial Regex Dtg();

    [GeneratedRegex(@"^[A-Z][A-Z0-9-]{0,30}$", RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex(@"^[0-9]{4}/(?<number>[0-9]{1,3})$", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"^(?<day>[0-9]{2})/(?<time>[0-9]{4})Z\s+(?<ns>[NS])(?<lat>[0-9]{2})(?<latmin>[0-9]{2})?\s+(?<ew>[EW])(?<lon>[0-9]{3})(?<lonmin>[0-9]{2})?\b", RegexOptions.CultureInvariant)]
    private static partial Regex Position();

    [GeneratedRegex(@"^(?<speed>[0-9]{1,3})\s*(?<unit>MPS|KT)$", RegexOptions.CultureInvariant)]
    private static partial Regex Wind();

    [GeneratedRegex("[0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex Digits();

    /// <summary>The value of a key with its place.</summary>
    private sealed record Field(string Key, string Value, int Line)
    {
        public ReadFault Fault(string reason) => new($"line {Line}, {Key}", reason, Line);
    }
}
