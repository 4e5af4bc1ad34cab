using System.Globalization;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>
/// Writes a garden book as the pages keep it: what the gardener wrote in full and in SI, so that reading it back gives the
/// same book. What is only typical stays out, so that a better catalogue helps old books. Items that stood in a table come
/// into the book. Remarks and units of a file it came from are not kept: <see cref="Edits.BookText"/> changes such a file line by line.
/// </summary>
public static partial class GardenWriter
{
    /// <summary>The whole text of the file.</summary>
    public static string Write(GardenBook book) => WrittenForm.Entry(Of(book), 0, "\n") + "\n";

    /// <summary>All that the book writes, in the order of the file.</summary>
    internal static WrittenMap Of(GardenBook book) => new(
        "",
        [
            new("garden", GardenLine(book)),
            .. Section("people", book.People.Select(person => Of(person, book.Language, book.Clock))),
            .. Section("sites", book.Sites.Select(Of)),
            .. Section("areas", book.Areas.Select(Of)),
            .. Section("stores", book.Stores.Select(Of)),
            .. Section("supplies", book.Supplies.Select(Of)),
            new("limits", Flow([.. book.Limits.OrderBy(pair => pair.Key).Select(pair => (Tokens.Of(pair.Key), (string?)Limit(pair.Value)))])),
            new("items", new WrittenList([.. book.Items.Select(Of)])),
        ],
        Flow: false);

    /// <summary>What a book writes of the garden as a whole.</summary>
    internal static WrittenMap GardenLine(GardenBook book) => Flow(
        ("id", Text(book.Id)), ("name", Text(book.Name)), ("zone", Text(book.Zone.Id)), ("units", Token(Tokens.Units, book.Units)), ("practice", Flag(book.Practice)), ("surveyed", book.Surveyed is { } walked ? Date(walked) : null),
        ("shopping_hours", book.ShoppingHours == GardenBook.UsualShoppingHours ? null : Number(book.ShoppingHours)),
        ("language", Other(Tokens.Languages, book.Language, Language.English)), ("clock", Other(Tokens.Clocks, book.Clock, ClockForm.Hours24)));

    /// <param name="language">The garden's, which need not be written again; null to have it written always. The clock likewise.</param>
    internal static WrittenMap Of(Person person, Language? language, ClockForm? clock) => Entry(
        person.Id,
        ("id", Text(person.Id)), ("name", Text(person.Name)), ("email", Text(person.Email)), ("second", Text(person.SecondEmail)), ("role", Tokens.Of(person.Role)),
        ("hours", List(person.Hours.Select(Hours))),
        ("days_off", List(person.DaysOff.Select(Date))),
        ("lift_kg", Number(person.LiftKg)), ("ladder", Tokens.Of(Ladder(person))),
        ("language", Other(Tokens.Languages, person.Language, language)), ("clock", Other(Tokens.Clocks, person.Clock, clock)),
        ("units", person.Units is { } units ? Token(Tokens.Units, units) : null));

    /// <summary>Null where it is what holds anyway.</summary>
    private static string? Other<T>(IReadOnlyDictionary<string, T> tokens, T value, T? usual)
        where T : struct => value.Equals(usual) ? null : Token(tokens, value);

    internal static LadderUse Ladder(Person person) => person.NoLadder ? LadderUse.Never : person.LadderAlone ? LadderUse.Alone : LadderUse.WithSomebody;

    private static string Hours(WorkHours hours) => OneLine(
        ("days", hours.Date is null ? List(hours.Days.Select(day => Token(Tokens.Weekdays, day))) : null),
        ("date", hours.Date is { } date ? Date(date) : null),
        ("from", Clock(hours.From)), ("to", Clock(hours.To)));

    internal static WrittenMap Of(Site site) => Entry(
        site.Id,
        ("id", Text(site.Id)), ("name", Text(site.Name)), ("latitude", Number(site.At.LatDeg)), ("longitude", Number(site.At.LonDeg)),
        ("terrain", Tokens.Of(site.Terrain)),
        ("travel_minutes", OneLine([.. site.TravelMinutes.Select(way => (way.Key, (string?)Number(way.Value)))])),
        ("codes", List(site.Codes.Select(Text))),
        ("datum", Text(site.Datum)), ("ground", Metres(site.GroundM)));

    internal static WrittenMap Of(Area area) => Entry(
        area.Id,
        ("id", Text(area.Id)), ("name", Text(area.Name)), ("site", Text(area.SiteId)), ("exposure", Tokens.Of(area.Exposure)),
        ("ground", Metres(area.GroundM)), ("water", Metres(area.WaterM)), ("neighbour", Metres(area.NeighbourM)), ("glass", Metres(area.GlassM)),
        ("plot", PlotText.Of(area.Plot)));

    internal static WrittenMap Of(StorePlace store) => Entry(
        store.Id,
        ("id", Text(store.Id)), ("name", Text(store.Name)), ("site", Text(store.SiteId)), ("floor_m2", Number(store.FloorM2)), ("volume_m3", Number(store.VolumeM3)),
        ("door", Metres(store.DoorM)), ("raised", Metres(store.RaisedM)));

    private static string Limit(WorkLimit limit) =>
        OneLine(("sustained", $"{Number(limit.SustainedMps)} m/s"), ("gust", $"{Number(limit.GustMps)} m/s"));

    internal static WrittenMap Of(Supply supply) => Entry(supply.Material, Material(supply.Material, supply.Quantity, supply.Unit));

    private static (string Key, string? Value)[] Material(string material, double quantity, string unit) =>
        [("material", Text(material)), ("quantity", Number(quantity)), ("unit", unit)];

    private static IEnumerable<WrittenField> Section(string key, IEnumerable<WrittenMap> entries) =>
        entries.ToList() is { Count: > 0 } list ? [new(key, new WrittenList(list))] : [];

    private static WrittenMap Flow(params (string Key, string? Value)[] entries) => Entry("", entries);

    private static string OneLine(params (string Key, string? Value)[] entries) => WrittenForm.OneLine(Flow(entries));

    private static WrittenMap Entry(string id, params (string Key, string? Value)[] entries) => new(id, [.. Fields(entries)], Flow: true);

    /// <summary>What has no value is not written.</summary>
    private static IEnumerable<WrittenField> Fields(IEnumerable<(string Key, string? Value)> entries) =>
        entries.Where(entry => entry.Value is not null).Select(entry => new WrittenField(entry.Key, new WrittenText(entry.Value!)));

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
