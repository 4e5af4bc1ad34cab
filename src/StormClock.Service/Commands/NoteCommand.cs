using System.CommandLine;
using StormClock.Core.Advisories;
using StormClock.Service.Books;

namespace StormClock.Service.Commands;

/// <summary><c>note</c>: what a person knows better than the feeds, or a time by which everybody leaves.</summary>
internal static class NoteCommand
{
    private static readonly Duration LongAgo = Duration.FromHours(12);
    private static readonly Duration JustNow = Duration.FromHours(1);

    public static Command Make()
    {
        var command = new Command("note", "Enter by hand what the feeds do not say; the service takes it at its next look.");
        command.Subcommands.Add(Wind());
        command.Subcommands.Add(Rain());
        command.Subcommands.Add(Water());
        command.Subcommands.Add(LeaveBy());
        command.Subcommands.Add(AllClear());
        return command;
    }

    private static Command Wind()
    {
        var from = new Option<string>("--from") { Required = true, Description = "Wind arrives no later than this, such as 2027-09-12T10:00Z." };
        var gust = new Option<string>("--gust") { Required = true, Description = "Peak gust at the garden, such as \"60 mph\" or \"25 m/s\"." };
        var until = new Option<string?>("--until") { Description = "When it is expected to be over." };
        return Kind("wind", "Unsafe wind is coming. It holds for 12 hours, or to the end of the wind it names where that is later (--until, else 12 hours after --from), or until --expires.", [from, gust, until], (parsed, inputs, frame) =>
        {
            var begins = inputs.Time(parsed.GetValue(from), "--from");
            var ends = inputs.Time(parsed.GetValue(until), "--until");
            var gustMps = inputs.Gust(parsed.GetValue(gust)!, "--gust");
            if (ends <= begins) inputs.Fault("--until: must be later than --from");
            if (begins < frame.Made - LongAgo) inputs.Fault("--from: is long past; look at the date");
            return begins is { } at && gustMps is { } speed ? new WindNote(frame.Garden, frame.By, frame.Made, at, speed, ends) : null;
        });
    }

    private static Command Rain()
    {
        var from = new Option<string>("--from") { Required = true, Description = "Rain begins no later than this, such as 2027-09-12T10:00Z." };
        var day = new Option<string>("--day") { Required = true, Description = "Most that may fall in 24 hours, such as \"6 in\" or \"150 mm\"." };
        var hour = new Option<string?>("--hour") { Description = "Most that may fall in one hour." };
        return Kind("rain", "Heavy rain is coming. It holds for 12 hours, or 12 hours past --from, or until --expires.", [from, day, hour], (parsed, inputs, frame) =>
        {
            var begins = inputs.Time(parsed.GetValue(from), "--from");
            var (dayMm, hourMm) = (inputs.Rain(parsed.GetValue(day), "--day"), inputs.Rain(parsed.GetValue(hour), "--hour"));
            if (hourMm > dayMm) inputs.Fault("--hour: must not be more than --day");
            if (begins < frame.Made - LongAgo) inputs.Fault("--from: is long past; look at the date");
            return begins is { } at && dayMm is { } mm ? new RainNote(frame.Garden, frame.By, frame.Made, at, mm, hourMm) : null;
        });
    }

    private static Command Water()
    {
        var level = new Option<string>("--level") { Required = true, Description = "What the water may reach, with its datum, such as \"6 ft NAVD88\"." };
        return Kind("water", "Water may rise to a level. It holds for 12 hours, or until --expires.", [level], (parsed, inputs, frame) =>
            inputs.Water(parsed.GetValue(level), "--level") is { } water ? new WaterNote(frame.Garden, frame.By, frame.Made, water.LevelM, water.Datum) : null);
    }

    private static Command LeaveBy()
    {
        var time = new Argument<string>("time") { Description = "Everybody leaves by this time, such as 2027-09-12T10:00Z." };
        return Kind("leave-by", "Everybody leaves by this time; it outranks every job.", [time], (parsed, inputs, frame) =>
        {
            var at = inputs.Time(parsed.GetValue(time), "time");
            if (at < frame.Made - JustNow) inputs.Fault("time: is past; look at the date, or give a time from now on");
            return at is { } by ? new LeaveByNote(frame.Garden, frame.By, frame.Made, by) : null;
        });
    }

    private static Command AllClear() =>
        Kind("all-clear", "Withdraw this garden's own notes. It never ends an official alert.", [], (_, _, frame) => new AllClearNote(frame.Garden, frame.By, frame.Made));

    private static Command Kind(string name, string description, IReadOnlyList<Symbol> own, Func<ParseResult, Inputs, Frame, Note?> read)
    {
        var garden = new Option<string?>("--garden") { Description = "Id of the garden. May be left out when there is only one." };
        var by = new Option<string>("--by") { DefaultValueFactory = _ => "the keeper", Description = "Who says so." };
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files." };
        var data = new Option<string?>("--data") { Description = "Data folder, in place of the one in the settings." };
        var now = new Option<string?>("--now") { Description = "The time it is entered. Default: now." };
        var expires = new Option<string?>("--expires") { Description = "When it stops to hold, at most five days ahead. Default: 12 hours after it was entered, and not before the hour it names has passed; for leave-by a day after its time." };
        var yes = new Option<bool>("--yes") { Description = "It takes the place of earlier notes of its kind, also where that makes things later." };
        var command = new Command(name, description) { garden, by, config, data, now, yes };
        if (name != "all-clear") command.Options.Add(expires);
        foreach (var symbol in own)
        {
            if (symbol is Option option) command.Options.Add(option);
            if (symbol is Argument argument) command.Arguments.Add(argument);
        }

        command.SetAction(parsed =>
        {
            var inputs = new Inputs();
            var installation = Installation.Load(inputs, parsed.GetValue(config), parsed.GetValue(data));
            var made = inputs.Time(parsed.GetValue(now), "--now") ?? Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
            var gardenId = installation is null ? null : GardenId(inputs, installation, parsed.GetValue(garden));
            var note = read(parsed, inputs, new(gardenId ?? "", parsed.GetValue(by)!, made));
            var ends = name == "all-clear" ? null : Expires(inputs, parsed.GetValue(expires), note) ?? OwnEnd(inputs, note);
            return inputs.Report() || note is null ? ExitCode.BadInput : Keep(installation!, note with { Expires = ends, Replaces = parsed.GetValue(yes) });
        });
        return command;
    }

    private static string? GardenId(Inputs inputs, Installation installation, string? given)
    {
        var ids = GardenFiles.Load(installation.GardensFolder).Select(file => file.InForce?.Id).OfType<string>().ToList();
        var known = ids.Count == 0 ? $"there is no garden in {installation.GardensFolder}" : $"known: {string.Join(", ", ids)}";
        if (given is null && ids.Count == 1) return ids[0];
        if (given is not null && ids.Contains(given)) return given;
        inputs.Fault(given is null ? $"--garden: name one garden; {known}" : $"--garden: there is no garden '{given}'; {known}");
        return null;
    }

    /// <summary>Longer than a note may hold: what is farther off than a storm's forecast is a slip.</summary>
    private static Instant? Expires(Inputs inputs, string? text, Note? note)
    {
        if (inputs.Time(text, "--expires") is not { } at || note is null) return null;
        if (at <= note.Made) inputs.Fault("--expires: is past; look at the date");
        else if (at > note.Made + AdvisoryLedger.LongestStanding) inputs.Fault("--expires: is more than five days ahead; enter the note anew when the time comes");
        else if (note is LeaveByNote leave && at < leave.LeaveBy) inputs.Fault("--expires: is before everybody leaves");
        return at;
    }

    /// <summary>A note that names an hour holds past it: it must not lapse before what it warns of.</summary>
    private static Instant? OwnEnd(Inputs inputs, Note? note)
    {
        if (inputs.HasFault) return null;
        Instant? over = note switch
        {
            WindNote wind => wind.Until ?? wind.From + Note.UsualHolding,
            RainNote rain => rain.From + Note.UsualHolding,
            _ => null,
        };
        if (over is not { } at || note is null || at <= note.Made + Note.UsualHolding) return null;
        if (at <= note.Made + AdvisoryLedger.LongestStanding) return at;
        inputs.Fault("--from: a note holds at most five days, and this would be over later; enter it when the time comes");
        return null;
    }

    private static int Keep(Installation installation, Note note)
    {
        try
        {
            var eased = NoteFolder.Standing(installation.NotesFolder, note.GardenId, note.Made).Where(note.Eases).ToList();
            if (note is AllClearNote && eased.Count > 0 && !note.Replaces)
            {
                Console.Error.WriteLine($"this would take back {Named(eased)}, and things may become later; add --yes if it is meant so");
                return ExitCode.BadInput;
            }

            if (!NoteFolder.Keep(installation.NotesFolder, note))
            {
                Console.Error.WriteLine("a note of this kind was made in this very second; try again");
                return ExitCode.BadInput;
            }

            Console.WriteLine($"noted: {note.Title}. The service takes it at its next look. Official orders come first.");
            if (eased.Count > 0) Console.WriteLine(note.Replaces ? $"It takes the place of {Named(eased)}." : $"Beside it {Named(eased)} still stands, and the more careful of them counts; enter it with --yes to put it in that place.");
            return ExitCode.Good;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine(trouble.Message);
            return ExitCode.OutsideTrouble;
        }
    }

    private static string Named(IEnumerable<Note> notes) => string.Join(" and ", notes.Select(note => $"the {note.Title} of {note.Made:uuuu-MM-dd HH:mm} UTC"));

    private sealed record Frame(string Garden, string By, Instant Made);
}
