using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>People and their hours.</summary>
public sealed partial class GardenReader
{
    private List<Person> People(YamlFields top, Language language, ClockForm clock)
    {
        var people = new List<Person>();
        foreach (var fields in top.Maps("people", "person", GardenKeys.Person, "- {id: rosa, name: Rosa}", required: true))
        {
            people.Add(Person(fields, first: people.Count == 0, language, clock));
            Once(personFields, people[^1].Id, fields, "person");
        }

        if (top.Has("people") && people.Count == 0 && !faults.Any) top.Fault("people", "lists nobody; add at least the gardener");
        return people;
    }

    /// <summary>Without a role the first person is the gardener and the others help; who does not say how to be spoken to is spoken to as the garden says.</summary>
    private static Person Person(YamlFields fields, bool first, Language language, ClockForm clock)
    {
        var ladder = Ladder(fields);
        var email = Address(fields, "email");
        return new(
            fields.Id("id", "rosa"),
            fields.Text("name", "Rosa"),
            email,
            fields.Choice<PersonRole>("role", Tokens.Roles, first ? PersonRole.Gardener : PersonRole.Helper),
            [.. fields.Maps("hours", "hours", GardenKeys.Hours, HoursExample).Select(Hours)],
            [.. fields.Words("days_off", "[2027-09-22]").Select(word => fields.DateOf("days_off", word)).OfType<LocalDate>()],
            fields.Number("lift_kg", 1, 60, JobDefaults.LiftKg, "13"),
            ladder == LadderUse.Alone)
        {
            NoLadder = ladder == LadderUse.Never,
            SecondEmail = Second(fields, email),
            Language = fields.Choice<Language>("language", Tokens.Languages, language),
            Clock = fields.Choice<ClockForm>("clock", Tokens.Clocks, clock),
            Units = fields.OptionalChoice("units", Tokens.Units),
        };
    }

    /// <summary><c>ladder_alone: true</c> says the same as <c>ladder: alone</c>, <c>false</c> the same as <c>with_somebody</c>.</summary>
    private static LadderUse Ladder(YamlFields fields)
    {
        if (fields.Has("ladder") && fields.Has("ladder_alone")) fields.Fault("ladder_alone", "and 'ladder' say the same thing twice; keep 'ladder'");
        var alone = fields.Flag("ladder_alone", false);
        return fields.Choice<LadderUse>("ladder", Tokens.Ladders, alone ? LadderUse.Alone : LadderUse.WithSomebody);
    }

    private const string HoursExample = "- {days: [mon, tue], from: \"17:30\", to: \"19:00\"}";

    private static WorkHours Hours(YamlFields fields)
    {
        var hours = new WorkHours(Weekdays(fields), fields.Date("date"), fields.Time("from", "\"07:30\""), fields.Time("to", "\"18:00\""));
        if (fields.Has("days") == fields.Has("date"))
            fields.Fault(fields.Has("days") ? "date" : "days", "needs either days (e.g. days: [sat, sun]) or one date (e.g. date: 2027-09-22), not both or none");
        if (fields.Has("from") && fields.Has("to") && hours.To <= hours.From && hours.To != default)
            fields.Fault("to", "must be later than 'from' on the same day");
        return hours;
    }

    private static List<IsoDayOfWeek> Weekdays(YamlFields fields)
    {
        var days = new List<IsoDayOfWeek>();
        foreach (var word in fields.Words("days", "[sat, sun]"))
        {
            if (Tokens.Weekdays.TryGetValue(word.Text, out var day)) days.Add(day);
            else fields.FaultAt(word.Line, "days", $"has '{YamlFields.Shown(word.Text)}', which is no weekday; write {string.Join(", ", Tokens.Weekdays.Keys)}");
        }

        return days;
    }

    /// <summary>Another mailbox of the same person, or somebody who can go and ask.</summary>
    private static string? Second(YamlFields fields, string? email)
    {
        var second = Address(fields, "second");
        if (second is not null && !fields.Has("email")) fields.Fault("second", "is a second address, and there is no first; add email, or call this one email");
        else if (second is not null && second == email) fields.Fault("second", "is the same as email; name another address, or take it out");
        return second;
    }

    private static string? Address(YamlFields fields, string key)
    {
        if (fields.OptionalText(key, "rosa@example.org") is not { Length: > 0 } address) return null;

        if (!EmailAddress.IsPlain(address)) fields.Fault(key, $"must be one plain address such as rosa@example.org, not '{YamlFields.Shown(address)}'");
        return address;
    }
}
