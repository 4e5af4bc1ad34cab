using System.Text.Json;
using NodaTime.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Json;

namespace StormClock.Core.Formats.Notes;

/// <summary>
/// Notes made by hand as they are kept: one JSON object with <c>note</c> (wind, rain, water, leave-by or all-clear), <c>garden</c>,
/// <c>by</c>, <c>made</c>, where given <c>expires</c> and <c>replaces</c>, and what the kind needs. Times are UTC, ISO 8601.
/// </summary>
public static class NoteReader
{
    /// <summary>A note is a few lines; anything larger is not one.</summary>
    private const int MostBytes = 16 * 1024;

    /// <summary>More than any gust that was ever measured (113 m/s, Barrow Island 1996).</summary>
    public const int MostGustMps = 120;

    /// <summary>More than any rain of a day that was ever measured (1,825 mm, Foc-Foc 1966, M).</summary>
    public const int MostDayMm = 2000;

    /// <summary>Higher or deeper is a slip of the pen.</summary>
    public const int MostWaterM = 30;

    private static readonly InstantPattern Times = InstantPattern.General;

    public static ReadResult<Note> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes) return new ReadFault("note", $"larger than {MostBytes} bytes; a note is a few lines of JSON");
        try
        {
            using var document = JsonDocument.Parse(bytes);
            return document.RootElement.ValueKind == JsonValueKind.Object
                ? Of(document.RootElement)
                : new ReadFault("note", "is JSON, but not one object");
        }
        catch (JsonException fault)
        {
            return ReadFault.At((int)(fault.LineNumber ?? 0) + 1, "is not well-formed JSON");
        }
    }

    /// <summary>The same note as JSON.</summary>
    public static byte[] Write(Note note)
    {
        var fields = new Dictionary<string, object?> { ["note"] = Kind(note), ["garden"] = note.GardenId, ["by"] = note.By, ["made"] = Times.Format(note.Made) };
        if (note.Expires is { } expires) fields["expires"] = Times.Format(expires);
        if (note.Replaces) fields["replaces"] = true;
        if (note is WindNote wind)
        {
            fields["from"] = Times.Format(wind.From);
            fields["gustMps"] = wind.GustMps;
            if (wind.Until is { } until) fields["until"] = Times.Format(until);
        }

        if (note is RainNote rain)
        {
            fields["from"] = Times.Format(rain.From);
            fields["dayMm"] = rain.DayMm;
            if (rain.HourMm is { } hour) fields["hourMm"] = hour;
        }

        if (note is WaterNote water)
        {
            fields["levelM"] = water.LevelM;
            fields["datum"] = water.Datum;
        }

        if (note is LeaveByNote leave) fields["leaveBy"] = Times.Format(leave.LeaveBy);
        return JsonSerializer.SerializeToUtf8Bytes(fields);
    }

    private static string Kind(Note note) => note switch
    {
        WindNote => "wind",
        RainNote => "rain",
        WaterNote => "water",
        LeaveByNote => "leave-by",
        _ => "all-clear",
    };

    private static ReadResult<Note> Of(JsonElement note)
    {
        var faults = new List<ReadFault>();
        var kind = Text(note, "note", faults);
        var garden = Text(note, "garden", faults);
        var by = Text(note, "by", faults);
        var made = Time(note, "made", faults);
        Instant? expires = HasKey(note, "expires") ? Time(note, "expires", faults) : null;
        var replaces = HasKey(note, "replaces") && note.GetProperty("replaces").ValueKind == JsonValueKind.True;
        Note? read = kind switch
        {
            "wind" => new WindNote(garden, by, made, Time(note, "from", faults), Gust(note, faults), HasKey(note, "until") ? Time(note, "until", faults) : null),
            "rain" => new RainNote(garden, by, made, Time(note, "from", faults), Number(note, "dayMm", 0, MostDayMm, faults), HasKey(note, "hourMm") ? Number(note, "hourMm", 0, MostDayMm, faults) : null),
            "water" => new WaterNote(garden, by, made, Number(note, "levelM", -MostWaterM, MostWaterM, faults), Text(note, "datum", faults)),
            "leave-by" => new LeaveByNote(garden, by, made, Time(note, "leaveBy", faults)),
            "all-clear" => new AllClearNote(garden, by, made),
            _ => null,
        };
        if (read is null) faults.Add(new("note", $"'{kind}' is not one of wind, rain, water, leave-by, all-clear"));
        return faults.Count > 0 ? ReadResult.Bad<Note>(faults) : read! with { Expires = expires, Replaces = replaces };
    }

    private static bool HasKey(JsonElement note, string name) => note.EnumerateObject().Any(key => key.NameEquals(name));

    private static string Text(JsonElement note, string name, List<ReadFault> faults)
    {
        if (note.Child(name).Text() is { Length: > 0 } text) return text;
        faults.Add(new(name, "is missing; it must be a text"));
        return "";
    }

    private static Instant Time(JsonElement note, string name, List<ReadFault> faults)
    {
        if (note.Child(name).Text() is { } text && Times.Parse(text) is { Success: true } time) return time.Value;
        faults.Add(new(name, "is missing or is not a time such as 2027-09-12T10:00:00Z"));
        return default;
    }

    private static double Number(JsonElement note, string name, double least, double most, List<ReadFault> faults)
    {
        if (note.Child(name).Number() is { } number && number >= least && number <= most) return number;
        faults.Add(new(name, FormattableString.Invariant($"is missing or is not a number from {least} to {most}")));
        return 0;
    }

    private static double Gust(JsonElement note, List<ReadFault> faults)
    {
        if (note.Child("gustMps").Number() is > 0 and < MostGustMps and var gust) return gust;
        faults.Add(new("gustMps", $"is missing or is not a gust between 0 and {MostGustMps} m/s"));
        return 0;
    }
}
