using StormClock.Core.Garden;

namespace StormClock.Service.Books.Kinds;

/// <summary>The jobs that come with a kind.</summary>
internal sealed partial class CatalogueReader
{
    private List<KindJob> Jobs(string token, YamlFields kind)
    {
        var jobs = new List<KindJob>();
        foreach (var fields in kind.Maps("jobs", $"job of kind '{token}'", CatalogueKeys.Job, "- {kind: tie, minutes: 10, minutes_each: 10}"))
        {
            var job = Job(fields, jobs);
            if (jobs.Any(before => before.Kind == job.Kind)) fields.Fault("kind", "is there twice; keep one job of each kind");
            jobs.Add(job);
        }

        return jobs;
    }

    private KindJob Job(YamlFields fields, List<KindJob> before) => new(
        fields.Choice<JobKind>("kind", Tokens.JobKinds, null),
        fields.Number("minutes", 0.1, 600, null, "10"),
        fields.Number("minutes_each", 0, 600, null, "10"),
        fields.Whole("people", 1, 2, 1, "1"),
        fields.OptionalChoice("class", Tokens.Classes),
        Needs(fields),
        After(fields, before),
        fields.OptionalText("caution", "two people carry it"),
        fields.OptionalText("fallback", "lay it down in the lee"))
    {
        PartKg = fields.OptionalNumber("part_kg", 0.1, 1000, "9"),
    };

    private List<MaterialNeed> Needs(YamlFields fields)
    {
        var needs = new List<MaterialNeed>();
        if (fields.OpenMap("materials", $"the materials of {fields.Subject}", "{rope: 8}") is not { } materials) return needs;

        foreach (var name in materials.Keys)
        {
            if (materialUnits.TryGetValue(name, out var unit)) needs.Add(new MaterialNeed(name, materials.Number(name, 0.01, 1000, null, "2"), unit));
            else materials.Fault(name, $"is not known; {Nearest.Hint(name, materialUnits.Keys)}");
        }

        return needs;
    }

    private static List<JobKind> After(YamlFields fields, List<KindJob> before)
    {
        var after = new List<JobKind>();
        foreach (var word in fields.Words("after", "[prune]"))
        {
            if (Tokens.JobKinds.TryGetValue(word.Text, out var kind) && before.Any(job => job.Kind == kind)) after.Add(kind);
            else fields.FaultAt(word.Line, "after", $"names '{YamlFields.Shown(word.Text)}', which is no job written above it");
        }

        return after;
    }
}
