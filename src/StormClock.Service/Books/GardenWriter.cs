using System.Globalization;
using System.Text;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>
/// Writes a garden book as the pages keep it: what the gardener wrote in full and in SI, so that reading it back gives the
/// same book. What is only typical stays out, so that a better catalogue helps old books. Items that stood in a table come
/// into the book. Remarks and units of the file it came from are not kept; <see cref="GardenFiles.Save"/> leaves that file beside it.
/// </summary>
public static partial class GardenWriter
{
    public static string Write(GardenBook book)
    {
        var text = new StringBuilder();
        Line(text, 0, "garden", Flow(("id", Text(book.Id)), ("name", Text(book.Name)), ("zone", Text(book.Zone.Id)), ("units", Token(Tokens.Units, book.Units)), ("practice", Flag(book.Practice)), ("surveyed", book.Surveyed is { } walked ? Date(walked) : null),
            ("shopping_hours", book.ShoppingHours == GardenBook.UsualShoppingHours ? null : Number(book.ShoppingHours)),
            ("language", Other(Tokens.Languages, book.Language, Language.English)), ("clock", Other(Tokens.Clocks, book.Clock, ClockForm.Hours24))));
        Section(text, "people", book.People.Select(person => Person(person, book)));
        Section(text, "sites", book.Sites.Select(Site));
        Section(text, "areas", book.Areas.Select(Area));
        Section(text, "stores", book.Stores.Select(Store));
        Section(text, "supplies", book.Supplies.Select(supply => Material(supply.Material, supply.Quantity, supply.Unit)));
        Line(text, 0, "limits", Flow([.. book.Limits.OrderBy(pair => pair.Key).Select(pair => (Tokens.Of(pair.Key), (string?)Limit(pair.Value)))]));
        Items(text, book);
        return text.ToString();
    }

    private static string Person(Person person, GardenBook book) => Flow(
        ("id", Text(person.Id)), ("name", Text(person.Name)), ("email", Text(person.Email)), ("second", Text(person.SecondEmail)), ("role", Tokens.Of(person.Role)),
        ("hours", List(person.Hours.Select(Hours))),
        ("days_off", List(person.DaysOff.Select(Date))),
        ("lift_kg", Number(person.LiftKg)), ("ladder", Tokens.Of(Ladder(person))),
        ("language", Other(Tokens.Languages, person.Language, book.Language)), ("clock", Other(Tokens.Clocks, person.Clock, book.Clock)),
        ("units", person.Units is { } units ? Token(Tokens.Units, units) : null));

    /// <summary>Null where it is what holds anyway.</summary>
    private static string? Other<T>(IReadOnlyDictionary<string, T> tokens, T value, T usual)
        where T : struct => value.Equals(usual) ? null : Token(tokens, value);

    private static LadderUse Ladder(Person person) => person.NoLadder ? LadderUse.Never : person.LadderAlone ? LadderUse.Alone : LadderUse.WithSomebody;

    private static string Hours(WorkHours hours) => Flow(
        ("days", hours.Date is null ? List(hours.Days.Select(day => Token(Tokens.Weekdays, day))) : null),
        ("date", hours.Date is { } date ? Date(date) : null),
        ("from", Clock(hours.From)), ("to", Clock(hours.To)));

    private static string Site(Site site) => Flow(
        ("id", Text(site.Id)), ("name", Text(site.Name)), ("latitude", Number(site.At.LatDeg)), ("longitude", Number(site.At.LonDeg)),
        ("terrain", Tokens.Of(site.Terrain)),
        ("travel_minutes", Flow([.. site.TravelMinutes.Select(way => (way.Key, (string?)Number(way.Value)))])),
        ("codes", List(site.Codes.Select(Text))),
        ("datum", Text(site.Datum)), ("ground", Metres(site.GroundM)));

    private static string Area(Area area) => Flow(
        ("id", Text(area.Id)), ("name", Text(area.Name)), ("site", Text(area.SiteId)), ("exposure", Tokens.Of(area.Exposure)),
        ("ground", Metres(area.GroundM)), ("water", Metres(area.WaterM)), ("neighbour", Metres(area.NeighbourM)), ("glass", Metres(area.GlassM)));

    private static string Store(StorePlace store) => Flow(
        ("id", Text(store.Id)), ("name", Text(store.Name)), ("site", Text(store.SiteId)), ("floor_m2", Number(store.FloorM2)), ("volume_m3", Number(store.VolumeM3)),
        ("door", Metres(store.DoorM)), ("raised", Metres(store.RaisedM)));

    private static string Limit(WorkLimit limit) =>
        Flow(("sustained", $"{Number(limit.SustainedMps)} m/s"), ("gust", $"{Number(limit.GustMps)} m/s"));

    private static string Material(string material, double quantity, string unit) =>
        Flow(("material", Text(material)), ("quantity", Number(quantity)), ("unit", unit));

    private static void Section(StringBuilder text, string key, IEnumerable<string> entries)
    {
        var lines = entries.ToList();
        if (lines.Count == 0) return;

        text.Append(key).Append(":\n");
        foreach (var line in lines) text.Append("  - ").Append(line).Append('\n');
    }

    private static void Line(StringBuilder text, int indent, string key, string? value)
    {
        if (value is not null) text.Append(' ', indent).Append(key).Append(": ").Append(value).Append('\n');
    }

    private static string Flow(params (string Key, string? Value)[] entries) =>
        $"{{{string.Join(", ", entries.Where(entry => entry.Value is not null).Select(entry => $"{entry.Key}: {entry.Value}"))}}}";

    private static string? List(IEnumerable<string?> entries) => entries.ToList() is { Count: > 0 } list ? $"[{string.Join(", ", list)}]" : null;

    /// <summary>Always in quotes, so that no text can be taken for anything else.</summary>
    private static string? Text(string? text) => text is null ? null : $"\"{text.Replace("\\", "\\\\").Replace("\"", "\\\"")}\"";

    private static string? Metres(double? length) => ItemText.With(length, "m");

    private static string? Number(double? number) => ItemText.Number(number);

    private static string Number(double number) => ItemText.Number(number);

    private static string Flag(bool flag) => flag ? "true" : "false";

    private static string Date(LocalDate date) => date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);

    private static string Clock(LocalTime time) => $"\"{time.ToString("HH:mm", CultureInfo.InvariantCulture)}\"";

    private static string Token<T>(IReadOnlyDictionary<string, T> tokens, T value)
        where T : struct => tokens.First(pair => pair.Value.Equals(value)).Key;
}
