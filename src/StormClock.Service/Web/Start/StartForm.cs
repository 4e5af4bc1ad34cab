using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Start;

/// <summary>A first garden from what one page asks: place, people, first area.</summary>
internal static class StartForm
{
    public static IReadOnlyList<string> Fields { get; } =
        ["garden", "units", "zone", "latitude", "longitude", "terrain", "person", "email", "helper", "helper_email", "area", "exposure"];

    public static IReadOnlyDictionary<string, string> Typed(IFormCollection form) => Fields.ToDictionary(key => key, key => EntryForm.Line(form[key].ToString()));

    /// <summary>Read as a file would be, so that the same faults are told; their lines mean nothing to whoever filled in a page.</summary>
    public static ReadResult<GardenBook> Read(IReadOnlyDictionary<string, string> typed)
    {
        var (garden, person, helper, area) = (typed["garden"], typed["person"], typed["helper"], typed["area"]);
        var lines = new List<string>
        {
            $"garden: {{id: {EntryIds.Of(garden, "garden")}, name: {Text(garden)}, zone: {Text(typed["zone"])}, units: {Text(typed["units"])}}}",
            "people:",
            $"  - {{id: {EntryIds.Of(person, "gardener")}, name: {Text(person)}, role: gardener{(typed["email"].Length > 0 ? $", email: {Text(typed["email"])}" : "")}}}",
        };
        if (helper.Length > 0) lines.Add($"  - {{id: {EntryIds.Free(EntryIds.Of(helper, "helper"), [EntryIds.Of(person, "gardener")])}, name: {Text(helper)}, role: helper{(typed["helper_email"].Length > 0 ? $", email: {Text(typed["helper_email"])}" : "")}}}");
        lines.Add("sites:");
        lines.Add($"  - {{id: home, name: {Text(garden)}, latitude: {Text(typed["latitude"])}, longitude: {Text(typed["longitude"])}, terrain: {Text(typed["terrain"])}}}");
        lines.Add("areas:");
        lines.Add($"  - {{id: {EntryIds.Of(area, "area")}, name: {Text(area)}, site: home, exposure: {Text(typed["exposure"])}}}");
        lines.Add("items: []");
        return GardenReader.Read(string.Join('\n', lines) + "\n", "garden.yaml");
    }

    private static string Text(string text) => EntryForm.Text(text).Text;
}
