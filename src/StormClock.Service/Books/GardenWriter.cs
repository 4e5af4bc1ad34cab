using System.Globalization;
using System.Text;
using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>
/// Writes a garden book as the pages keep it: every value in full and in SI, so that reading it back gives the same
/// book. Remarks and units of the file it came from are not kept; <see cref="GardenFiles.Save"/> leaves that file beside it.
/// </summary>
public static class GardenWriter
{
    public static string Write(GardenBook book)
    {
        var text = new StringBuilder();
        Line(text, 0, "garden", Flow(("id", Text(book.Id)), ("name", Text(book.Name)), ("zone", Text(book.Zone.Id)), ("units", Token(Tokens.Units, book.Units)), ("practice", Flag(book.Practice))));
        Section(text, "people", book.People.Select(Person));
        Section(text, "sites", book.Sites.Select(Site));
        Section(text, "areas", book.Areas.Select(area =>
            Flow(("id", Text(area.Id)), ("name", Text(area.Name)), ("site", Text(area.SiteId)), ("exposure", Tokens.Of(area.Exposure)))));
        Section(text, "stores", book.Stores.Select(store =>
            Flow(("id", Text(store.Id)), ("name", Text(store.Name)), ("site", Text(store.SiteId)), ("floor_m2", Number(store.FloorM2)), ("volume_m3", Number(store.VolumeM3)))));
        Section(text, "supplies", book.Supplies.Select(supply => Material(supply.Material, supply.Quantity, supply.Unit)));
        Line(text, 0, "limits", Flow([.. book.Limits.OrderBy(pair => pair.Key).Select(pair => (Tokens.Of(pair.Key), (string?)Limit(pair.Value)))]));
        Items(text, book);
        return text.ToString();
    }

    private static string Person(Person person) => Flow(
        ("id", Text(person.Id)), ("name", Text(person.Name)), ("email", Text(person.Email)), ("role", Tokens.Of(person.Role)),
        ("hours", List(person.Hours.Select(Hours))),
        ("days_off", List(person.DaysOff.Select(Date))),
        ("lift_kg", Number(person.LiftKg)), ("ladder_alone", Flag(person.LadderAlone)));

    private static string Hours(WorkHours hours) => Flow(
        ("days", hours.Date is null ? List(hours.Days.Select(day => Token(Tokens.Weekdays, day))) : null),
        ("date", hours.Date is { } date ? Date(date) : null),
        ("from", Clock(hours.From)), ("to", Clock(hours.To)));

    private static string Site(Site site) => Flow(
        ("id", Text(site.Id)), ("name", Text(site.Name)), ("latitude", Number(site.At.LatDeg)), ("longitude", Number(site.At.LonDeg)),
        ("terrain", Tokens.Of(site.Terrain)),
        ("travel_minutes", Flow([.. site.TravelMinutes.Select(way => (way.Key, (string?)Number(way.Value)))])),
        ("codes", List(site.Codes.Select(Text))));

    private static string Limit(WorkLimit limit) =>
        Flow(("sustained", $"{Number(limit.SustainedMps)} m/s"), ("gust", $"{Number(limit.GustMps)} m/s"));

    private static string Material(string material, double quantity, string unit) =>
        Flow(("material", Text(material)), ("quantity", Number(quantity)), ("unit", unit));

    private static void Items(StringBuilder text, GardenBook book)
    {
        if (book.Items.Count == 0)
        {
            text.Append("items: []\n");
            return;
        }

        text.Append("items:\n");
        foreach (var item in book.Items)
        {
            text.Append("  - id: ").Append(Text(item.Id)).Append('\n');
            Line(text, 4, "name", Text(item.Name));
            Line(text, 4, "kind", item.Kind);
            Line(text, 4, "area", Text(item.AreaId));
            Line(text, 4, "count", Number(item.Count));
            Line(text, 4, "mass", item.Written.MassKg is { } mass ? $"{Number(mass)} kg" : null);
            Line(text, 4, "value", Number(item.ValueUsd));
            Line(text, 4, "endangers", List(item.Endangers.Select(Text)));
            if (item.Jobs.Count > 0) text.Append("    jobs:\n");
            foreach (var job in item.Jobs) text.Append("      - ").Append(Job(job)).Append('\n');
        }
    }

    private static string Job(Job job) => Flow(
        ("kind", Tokens.Of(job.Kind)), ("minutes", Number(job.Minutes)), ("people", Number(job.People)), ("class", Tokens.Of(job.Class)),
        ("after", List(job.After.Select(Text))),
        ("value", Number(job.Value)),
        ("materials", List(job.Materials.Select(need => Material(need.Material, need.Quantity, need.Unit)))),
        ("store", job.StoreId is null ? null : Flow(("id", Text(job.StoreId)), ("floor_m2", Number(job.StoreFloorM2)), ("volume_m3", Number(job.StoreVolumeM3)))),
        ("fallback", Text(job.Fallback)),
        ("undo", job.Undo is { } undo ? Tokens.Of(undo) : "none"),
        ("last_round", Flag(job.LastRound)));

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

    private static string? Number(double? number) => number is { } value ? Number(value) : null;

    /// <summary>The shortest digits that give the same number back.</summary>
    private static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    private static string Flag(bool flag) => flag ? "true" : "false";

    private static string Date(LocalDate date) => date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);

    private static string Clock(LocalTime time) => $"\"{time.ToString("HH:mm", CultureInfo.InvariantCulture)}\"";

    private static string Token<T>(IReadOnlyDictionary<string, T> tokens, T value)
        where T : struct => tokens.First(pair => pair.Value.Equals(value)).Key;
}
